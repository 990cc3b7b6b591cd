using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Gauges;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Testing.Gauges;
using Xunit.Abstractions;

namespace SectionScan.Jobs.Tests.Gauges;

/// <summary>Rendered photos whose truth is exact, so that what a study finds is known beforehand. A pixel covers 0.16 mm.</summary>
public sealed class MakeGaugeStudyTests(ITestOutputHelper output) : IDisposable
{
    private const double PixelMm = 0.165;

    private static readonly DigitiseSettings Checked = new() { PrintRatio = (1, 1), Lens = PlugPhotos.Profile };

    private readonly PlugPhotos photos = new();

    public void Dispose() => photos.Dispose();

    [Fact]
    public void Round_stadium_square_and_rectangular_plugs_tell_how_well_a_phone_measures()
    {
        var table = photos.Study(PlugPhotos.FourShapes, ["Ann"], 2).Table();

        var outcome = MakeGaugeStudy.Run(table, Checked);

        Assert.Empty(outcome.Problems);
        var study = outcome.Study!;
        foreach (var r in study.Readings)
        {
            output.WriteLine(FormattableString.Invariant($"{r.Photo} {r.ExcessMm:+0.0000;-0.0000} mm, pixel {r.PixelMm:0.000}"));
        }

        output.WriteLine($"{study.Bias}, repeatability {study.RepeatabilityMm}, reproducibility {study.ReproducibilityMm}, edge u {study.EdgeStandardUncertaintyMm}, scale u {study.ScaleStandardUncertainty}");

        // The sheet is printed true and the lens is known: what is left is the edge, to a fifth of a pixel, and no scale.
        Assert.Equal((8, 4, "sheet"), (study.Readings.Count, study.Plugs.Count, study.Target));
        Assert.InRange(study.PixelMm, 0.9 * PixelMm, 1.1 * PixelMm);
        Assert.All(study.Readings, r => Assert.InRange(r.ExcessMm, -0.4 * PixelMm, 0.4 * PixelMm));
        Assert.Equal(0, study.Bias.EdgeMm, Math.Max(0.2 * PixelMm, 3 * study.Bias.EdgeStandardUncertaintyMm));
        Assert.Equal(0, study.Bias.Scale, Math.Max(0.001, 3 * study.Bias.ScaleStandardUncertainty));
        Assert.InRange(study.EdgeStandardUncertaintyMm, 0.002, 0.3 * PixelMm);
        Assert.True(study.HasLensProfile);
        Assert.InRange(study.RepeatabilityMm, 1e-4, 0.2 * PixelMm);
        Assert.Equal(["Example Example phone"], study.CameraModels);
    }

    [Fact]
    public void A_print_that_is_off_and_not_told_shows_as_scale()
    {
        photos.PrintRatio = 1.006;
        var table = photos.Study([PlugPhotos.FourShapes[0], new("ring 46", PlugShape.Circle, 46, 46, 0.002)], ["Ann"], 2).Table();

        var outcome = MakeGaugeStudy.Run(table, Checked with { PrintRatio = null });

        // Printed lengths are 1.006 times as long as taken for: a thing reads 1/1.006 of its size.
        var study = outcome.Study!;
        output.WriteLine(study.Bias.ToString());
        Assert.Equal((1 / 1.006) - 1, study.Bias.Scale, Math.Max(0.0015, 3 * study.Bias.ScaleStandardUncertainty));
        Assert.True(study.ScaleStandardUncertainty >= Math.Abs(study.Bias.Scale));
        Assert.Contains(outcome.Cautions, c => c.Contains("too small. Measure the check bars", StringComparison.Ordinal));
        Assert.Contains(outcome.Cautions, c => c.Contains("One person, camera and sheet", StringComparison.Ordinal));
        Assert.Contains(outcome.Cautions, c => c.Contains("The study is small", StringComparison.Ordinal));
    }

    [Fact]
    public void Photos_that_are_not_one_plug_or_another_plug_are_all_named_and_nothing_is_made_of_the_rest()
    {
        var (ring, block) = (PlugPhotos.FourShapes[0], PlugPhotos.FourShapes[3]);
        photos.Study([ring], ["Ann"], 1);
        photos.Take("two.jpg", 40, ring, PlugPhotos.FourShapes[2]);
        photos.Take("block.jpg", 41, block);
        photos.Take("disc.jpg", 42, ring);
        photos.Enter("two.jpg", ring, "Ann");
        photos.Enter("block.jpg", block with { WidthMm = 45, Name = "block 45" }, "Ann");
        photos.Enter("disc.jpg", new("square 20", PlugShape.Square, 20, 20, 0.002), "Ann");
        photos.Enter("gone.jpg", block, "Ann");

        var outcome = MakeGaugeStudy.Run(photos.Table(), Checked);

        Assert.Null(outcome.Study);
        Assert.Equal(["not-one-plug", "other-plug", "plug-not-straight", "photo-not-found"], outcome.Problems.Select(p => p.Code));
        Assert.Contains("2 things", outcome.Problems[0].What, StringComparison.Ordinal);
        Assert.All(outcome.Problems, p => Assert.NotEmpty(p.Remedy));
    }
}
