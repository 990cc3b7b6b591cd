using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;
using Xunit.Abstractions;

namespace SectionScan.Accuracy.Tests;

public sealed class CoverageTests(ITestOutputHelper output)
{
    private const int FewestSections = 60;
    private const int MostPhotos = 24;

    // Of 60 intervals that each hold with 95 %, fewer than 88 % hold in 1 run of 100 (binomial distribution); the report command counts
    // hundreds and is held to 93 to 98 %.
    private const double LeastShare = 0.88;

    [Fact]
    public void The_stated_intervals_hold_the_truth()
    {
        using var scenes = new RenderedScenes();
        var (withProfile, without) = (new CoverageCount(), new CoverageCount());
        for (var number = 1; number <= MostPhotos && Math.Min(withProfile.Sections, without.Sections) < FewestSections; number++)
        {
            var scene = SceneSampler.Sample(number).Resized(0.5);
            withProfile.Add(scenes, scene, hasProfile: true);
            without.Add(scenes, scene, hasProfile: false);
        }

        output.WriteLine($"With a profile: {withProfile.Table()}\nWithout: {without.Table()}");
        Assert.All(new[] { withProfile, without }, AssertHolds);
    }

    [Fact]
    public void A_face_that_its_lit_wall_hides_comes_with_a_warning_and_a_wide_interval()
    {
        // Amber slices, thick and lit from the side that the camera sees: by eye, too, face and wall are one.
        using var scenes = new RenderedScenes();
        var scene = SceneSampler.Sample(12).Resized(0.5);

        var found = scenes.Judge(scene, hasProfile: true).Found;

        var hidden = Assert.Single(found, f => f.Truth.Station == 18);
        Assert.Contains(hidden.Section.Warnings, w => w.Contains("cannot be told from the face", StringComparison.Ordinal));
        var width = MeasuredOutline.Of(hidden.Section.Outline, hidden.Section.ErrorSources, [MeasureCatalogue.Width])[MeasureCatalogue.Width].Estimate;
        output.WriteLine(FormattableString.Invariant($"{hidden.Truth.Name}: width {width.Value:0.00} mm (truth {hidden.Truth.WidthMm:0.00} mm), u {width.StandardUncertainty:0.00} mm"));
        Assert.True(width.StandardUncertainty > 0.25);
    }

    private static void AssertHolds(CoverageCount coverage)
    {
        Assert.True(coverage.Sections >= FewestSections, $"Only {coverage.Sections} sections were found in {MostPhotos} photos.");
        Assert.All(Enumerable.Range(0, 3), measure => Assert.InRange(coverage.ShareOf(measure), LeastShare, 1));
    }
}
