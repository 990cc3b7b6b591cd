using SectionScan.Jobs.Files;

namespace SectionScan.Jobs.Tests.Files;

public class FileNamesTests
{
    [Theory]
    [InlineData("p01.jpg", "p01.jpg")]
    [InlineData("intake 1/left", "intake-1-left")]
    [InlineData("../../etc", "etc")]
    [InlineData("Rückseite 2", "Rückseite-2")]
    [InlineData("***", "section")]
    [InlineData("", "section")]
    public void Words_become_a_name_that_every_file_system_takes(string words, string name) => Assert.Equal(name, FileNames.Safe(words));

    [Fact]
    public void A_long_name_is_cut() => Assert.Equal(80, FileNames.Safe(new string('a', 500)).Length);

    // "a-2" is a name that somebody gave: the second "a" must not take it.
    [Fact]
    public void Names_that_meet_are_numbered_past_those_that_are_there() =>
        Assert.Equal(["a", "a-3", "a-2", "b", "A-4"], FileNames.Unique(["a", "a", "a-2", "b", "A"]));
}
