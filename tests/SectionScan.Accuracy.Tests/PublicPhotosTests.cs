using SectionScan.Testing.Accuracy;
using Xunit.Abstractions;

namespace SectionScan.Accuracy.Tests;

public sealed class PublicPhotosTests(ITestOutputHelper output)
{
    public static TheoryData<string> Names => [.. SamplePhotoSet.Names];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_section_is_found_and_right_with_the_lens_profile(string name) => Judge(name, hasProfile: true);

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_section_is_found_and_right_without_a_profile(string name) => Judge(name, hasProfile: false);

    private void Judge(string name, bool hasProfile)
    {
        var verdict = SamplePhotoSet.Judge(name, hasProfile);
        output.WriteLine(AccuracyTable.Sections([verdict]));

        Assert.Empty(AccuracyLimits.Usable.Broken(verdict));
    }
}
