using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Lengthwise;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Profiles;
using SectionScan.Porting.Lengthwise;
using SectionScan.Testing.Repository;
using SectionScan.Testing.Truth;

namespace SectionScan.Jobs.Tests.Lengthwise;

/// <summary>The rendered mould half p09, whose exact outline is known.</summary>
public sealed class ReadLengthwiseTests : IDisposable
{
    private readonly ResultFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void The_photographed_mould_half_has_the_lines_heights_and_radii_of_its_truth()
    {
        var section = SamplePhotos.TruthOf("p09").Sections[0];
        var truth = LengthwiseFinder.Find(
            "truth", Outline.From(section.PlacedOutline.Select(p => new SectionPoint(p.XMm, -p.YMm))).ValueOrThrow(), []).ValueOrThrow();
        var lens = LensFiles.Read(RepositoryFolder.PathOf("calibration", "sample-phone.lens.json")).ValueOrThrow();

        var outcome = ReadLengthwise.Run(new(
            SamplePhotos.PhotoPath("p09"), null, LengthwiseAlignment.Seat, false, new() { ThicknessMm = 14, Lens = lens, PrintRatio = (1, 1) }, folder.PathOf("out"),
            PaperSize.A4, LengthUnit.Millimetre)).ValueOrThrow();

        var shape = outcome.Shape;
        Assert.Equal(1, shape.LengthMm / truth.LengthMm, 0.002);
        Assert.Equal(truth.Face.HeightMm, shape.Face.HeightMm, 0.1);
        Assert.Equal(truth.Seat.HeightMm, shape.Seat.HeightMm, 0.1);
        var heights = Enumerable.Range(0, 11).Select(k => shape.At(shape.LengthMm * k / 10).HeightMm - truth.At(truth.LengthMm * k / 10).HeightMm).ToList();

        // An air bubble at the very edge draws the floor in by 0.3 mm over 2 mm of its length; the uncertainty stated there holds it, and is
        // small where the edge is plain.
        var u = new LengthwiseUncertainty(shape);
        var stated = Enumerable.Range(0, 11).Select(k => u.Height(shape.At(shape.LengthMm * k / 10)).ExpandedUncertainty).ToList();
        Assert.All(heights.Zip(stated), each => Assert.InRange(Math.Abs(each.First), 0, each.Second));
        Assert.InRange(stated.Count(height => height <= 0.11), 7, 11);
        Assert.InRange(stated.Max(), 0, 0.6);
        Assert.InRange(heights.Count(error => Math.Abs(error) <= 0.05), 9, 11);
        Assert.Equal(1, shape.FloorRadius.ValueOrThrow().RadiusMm.Value / truth.FloorRadius.ValueOrThrow().RadiusMm.Value, 0.01);
        Assert.Equal(1, shape.RoofRadius.ValueOrThrow().RadiusMm.Value / truth.RoofRadius.ValueOrThrow().RadiusMm.Value, 0.01);

        // Both ends laid on each other, 95 % of floor and roof lie within 0.1 mm.
        var comparison = LengthwiseComparison.Of(truth, shape, LengthwiseAlignment.Both);
        Assert.All([comparison.Floor, comparison.Roof], samples => Assert.InRange(Percentile95(samples), 0, 0.1));
        Assert.Equal(6, outcome.Files.Count);
        Assert.All(outcome.Files, file => Assert.True(new FileInfo(file).Length > 1000));
    }

    [Theory]
    [InlineData("p01", 6.0)]
    [InlineData("p08", null)]
    public void A_photo_of_slices_or_of_a_casting_without_both_ends_says_so_once(string photo, double? thicknessMm)
    {
        var outcome = ReadLengthwise.Run(new(
            SamplePhotos.PhotoPath(photo), null, LengthwiseAlignment.Seat, false, new() { ThicknessMm = thicknessMm }, folder.PathOf("out"), PaperSize.A4, LengthUnit.Millimetre));

        Assert.False(outcome.TryGet(out _, out var problem));
        Assert.Equal("lengthwise-ends-missing", problem.Code);
        Assert.Contains("A casting is open at its ends: lay a straight bar across face and seat", problem.Remedy, StringComparison.Ordinal);
        Assert.False(Directory.Exists(folder.PathOf("out")));
    }

    [Fact]
    public void A_drawn_outline_is_read_as_well_as_a_photo_and_written_for_a_cutter()
    {
        // The truth's outline through a DXF drawing and back.
        var section = SamplePhotos.TruthOf("p09").Sections[0];
        var drawing = folder.PathOf("half.dxf");
        using (var stream = File.Create(drawing))
        {
            DxfWriter.Write([DxfPolyline.Of(Outline.From(section.Outline).ValueOrThrow())], stream);
        }

        var outcome = ReadLengthwise.Run(new(
            drawing, null, LengthwiseAlignment.Seat, false, new(), folder.PathOf("drawn"), PaperSize.A4, LengthUnit.Millimetre)).ValueOrThrow();
        var again = ReadLengthwise.Run(new(
            outcome.Files.Single(file => file.EndsWith(".dxf", StringComparison.Ordinal)), null, LengthwiseAlignment.Seat, false, new(), null, PaperSize.A4,
            LengthUnit.Millimetre));

        Assert.True(again.TryGet(out var cut, out var problem), problem?.What);
        Assert.Equal(outcome.Shape.Face.HeightMm, cut.Shape.Face.HeightMm, 0.02);
        Assert.Equal(outcome.Shape.LengthMm, cut.Shape.LengthMm, 0.1);
    }

    private static double Percentile95(IReadOnlyList<ProfileSample> samples) =>
        samples.Select(sample => Math.Abs(sample.DeviationMm)).Order().ElementAt((int)(0.95 * samples.Count));
}
