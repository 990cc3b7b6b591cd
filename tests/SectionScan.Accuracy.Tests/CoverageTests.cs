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

    [Fact(Skip = "Open: in the mixed scenes 53 to 63 % of the intervals hold the truth; few gross errors, and intervals too narrow.")]
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

    private static void AssertHolds(CoverageCount coverage)
    {
        Assert.True(coverage.Sections >= FewestSections, $"Only {coverage.Sections} sections were found in {MostPhotos} photos.");
        Assert.All(Enumerable.Range(0, 3), measure => Assert.InRange(coverage.ShareOf(measure), LeastShare, 1));
    }
}
