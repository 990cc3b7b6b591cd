using SectionScan.Testing.Accuracy;
using Xunit.Abstractions;

namespace SectionScan.Accuracy.Tests;

public sealed class TightAccuracyTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. SamplePhotoSet.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void The_outline_is_within_0_05_mm_with_the_lens_profile(string name) => Judge(name, true, AccuracyLimits.Tight);

    [Theory]
    [MemberData(nameof(Names))]
    public void The_outline_is_within_0_10_mm_without_a_profile(string name) => Judge(name, false, AccuracyLimits.TightWithoutProfile);

    private void Judge(string name, bool hasProfile, AccuracyLimits limits)
    {
        var verdict = SamplePhotoSet.Judge(name, hasProfile);
        output.WriteLine(AccuracyTable.Sections([verdict]));

        Assert.Empty(limits.Broken(verdict));
    }
}
