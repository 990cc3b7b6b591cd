using SectionScan.Testing.Accuracy;
using Xunit.Abstractions;

namespace SectionScan.Accuracy.Tests;

public sealed class TightAccuracyTests(ITestOutputHelper output)
{
    // Photos that do not keep the limits yet: they have tests of their own, skipped and with the numbers reached.
    private static readonly string[] OpenWithProfile = ["p03", "p07"];

    public static TheoryData<string> NamesWithProfile => [.. SamplePhotoSet.Names.Except(OpenWithProfile)];

    public static TheoryData<string> NamesWithoutProfile => [.. SamplePhotoSet.Names];

    [Theory]
    [MemberData(nameof(NamesWithProfile))]
    public void The_outline_is_within_0_05_mm_with_the_lens_profile(string name) => Judge(name, true, AccuracyLimits.Tight);

    [Theory]
    [MemberData(nameof(NamesWithoutProfile))]
    public void The_outline_is_within_0_10_mm_without_a_profile(string name) => Judge(name, false, AccuracyLimits.TightWithoutProfile);

    [Fact(Skip = "Open: station 1 is 0.090 mm too wide; 95 % of the outlines lie within 0.048 to 0.059 mm.")]
    public void The_outline_under_a_hard_shadow_is_within_0_05_mm_with_the_lens_profile() => Judge("p03", true, AccuracyLimits.Tight);

    [Fact(Skip = "Open: station 8 is 0.064 mm too wide.")]
    public void The_outlines_of_p07_are_within_0_05_mm_with_the_lens_profile() => Judge("p07", true, AccuracyLimits.Tight);

    private void Judge(string name, bool hasProfile, AccuracyLimits limits)
    {
        var verdict = SamplePhotoSet.Judge(name, hasProfile);
        output.WriteLine(AccuracyTable.Sections([verdict]));

        Assert.Empty(limits.Broken(verdict));
    }
}
