using System.Text.RegularExpressions;
using SectionScan.Testing.Repository;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Tests.Desk;

public partial class PageWordsTests
{
    [Fact]
    public void Nothing_that_the_layers_below_may_say_reaches_a_page_with_an_option_of_the_command_line()
    {
        var said = Directory.EnumerateFiles(Path.Combine(RepositoryFolder.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(path => !path.Contains("SectionScan.Cli", StringComparison.Ordinal) && !path.Contains("/obj/", StringComparison.Ordinal)
                && !path.EndsWith("PageWords.cs", StringComparison.Ordinal))
            .SelectMany(path => Literal().Matches(File.ReadAllText(path)).Select(match => match.Groups[1].Value))
            .Where(text => Dashes().IsMatch(text)).ToList();

        Assert.InRange(said.Count, 20, 200);
        Assert.All(said, text => Assert.DoesNotMatch(Dashes(), PageWords.Of(text)));
    }

    [Theory]
    [InlineData("The print was not checked: measure the check bars with a calliper and give --print-ratio X,Y; until then", "enter them at Prepare; until then")]
    [InlineData("a slice of 6 mm comes out about 5 % too large in area. Give --thickness MM.", "too large in area. Enter the thickness at Capture, then digitise again.")]
    [InlineData("or give a wider --gap.", "or give a wider gap.")]
    [InlineData("Choose a larger paper with --paper.", "Choose a larger paper with paper.")]
    [InlineData("Give --file-units mm or --file-units in.", "Give file-units mm or file-units in.")]
    public void Options_become_fields(string said, string shown) => Assert.EndsWith(shown, PageWords.Of(said), StringComparison.Ordinal);

    [GeneratedRegex("\"((?:[^\"\\\\\\n]|\\\\.)*)\"")]
    private static partial Regex Literal();

    [GeneratedRegex("--[a-z]")]
    private static partial Regex Dashes();
}
