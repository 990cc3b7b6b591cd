using SectionScan.Imaging.Digitising;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Digitising;

/// <summary>What a person is told of single sections of the sample photos, with the lens profile.</summary>
public sealed class SectionCautionsTests
{
    [Theory]
    [InlineData("p04", 3)]
    [InlineData("p05", 6)]
    public void A_wall_whose_lean_nothing_in_the_photo_tells_is_told_with_its_cause_and_a_way_out(string photo, int station)
    {
        var section = Digitise(photo).Single(each => each.Station == station);

        var caution = Assert.Single(section.Cautions, each => each.Code == SectionCautions.WallLeanUnknown);
        var area = MeasuredOutline.Of(section.Outline, section.ErrorSources)[MeasureCatalogue.Area].Estimate;
        Assert.Contains(FormattableString.Invariant($"±{100 * area.ExpandedUncertainty / area.Value:0.0} %"), caution.What, StringComparison.Ordinal);
        Assert.Contains("nothing tells how it leans", caution.What, StringComparison.Ordinal);
        Assert.Contains("camera tilted", caution.Remedy, StringComparison.Ordinal);
        Assert.Contains($"{caution.What} {caution.Remedy}", section.Warnings);
    }

    [Fact]
    public void Sections_whose_interval_is_as_usual_are_not_cautioned_of_their_walls_lean() =>
        Assert.All(Digitise("p06"), section => Assert.DoesNotContain(section.Cautions, each => each.Code == SectionCautions.WallLeanUnknown));

    // p01 and p03 show the same slices in the same places (sample-images/README.md): from nearly above, and tilted by 18°.
    [Fact]
    public void Tilting_the_camera_as_the_caution_says_shows_the_wall_and_narrows_the_interval()
    {
        var (above, tilted) = (Digitise("p01").Single(each => each.Station == 2), Digitise("p03").Single(each => each.Station == 2));

        Assert.Contains(above.Cautions, each => each.Code == SectionCautions.WallLeanUnknown);
        Assert.DoesNotContain(tilted.Cautions, each => each.Code == SectionCautions.WallLeanUnknown);
        Assert.True(AreaU(tilted) < 0.65 * AreaU(above));
    }

    private static double AreaU(DigitisedSection section) =>
        MeasuredOutline.Of(section.Outline, section.ErrorSources)[MeasureCatalogue.Area].Estimate.StandardUncertainty;

    private static IReadOnlyList<DigitisedSection> Digitise(string photo) =>
        Digitiser.Digitise(SamplePhotos.PhotoPath(photo), PhotoJudge.Told(SamplePhotos.TruthOf(photo)) with { Lens = SamplePhotoSet.Profile }).ValueOrThrow().Sections;
}
