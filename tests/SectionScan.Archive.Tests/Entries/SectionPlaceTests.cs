using SectionScan.Archive.Entries;
using SectionScan.Porting.Ports;

namespace SectionScan.Archive.Tests.Entries;

public class SectionPlaceTests
{
    [Theory]
    [InlineData("Bramble 480 twin/intake 1/station 3")]
    [InlineData("Bramble 480 twin/exhaust 2 left/station 0/as cast")]
    public void A_path_is_read_as_it_was_written(string path) =>
        Assert.Equal(path, SectionPlace.Parse(path).ValueOrThrow().Path);

    [Fact]
    public void Large_letters_and_spaces_do_not_matter() =>
        Assert.Equal(new("Bramble", new(PortKind.Exhaust, 2), 4), SectionPlace.Parse(" Bramble / Exhaust 2 / STATION 4").ValueOrThrow());

    [Theory]
    [InlineData("")]
    [InlineData("Bramble")]
    [InlineData("Bramble/intake 1")]
    [InlineData("/intake 1/station 3")]
    [InlineData("Bramble/inlet 1/station 3")]
    [InlineData("Bramble/intake 0/station 3")]
    [InlineData("Bramble/intake 1/station three")]
    [InlineData("Bramble/intake 1/station -3")]
    [InlineData("Bramble/intake 1/station 3/as cast/old")]
    public void What_is_no_path_is_refused(string path) =>
        Assert.Equal("section-path-unusable", Results.ProblemOf(SectionPlace.Parse(path)).Code);
}
