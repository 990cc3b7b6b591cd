using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Tests.Problems;

public class ProblemPrinterTests : TerminalTest
{
    private const char Escape = '\u001b';

    private static readonly Problem FewCorners = new(
        "too-few-corners",
        "Found 3 corners of the scale target; at least 12 are needed.",
        "photos/p07 [front].jpg",
        "Retake the photo with the whole target in view and no glare on it.");

    [Fact]
    public void What_where_and_remedy_stand_on_one_line_each_when_nobody_watches()
    {
        new ProblemPrinter(Terminal.ForWriters(Answers, Messages)).Print(FewCorners with { What = FewCorners.What + new string('!', 500) });

        Assert.Equal(
            "problem  Found 3 corners of the scale target; at least 12 are needed." + new string('!', 500) + "\n"
            + "  where  photos/p07 [front].jpg\n"
            + " remedy  Retake the photo with the whole target in view and no glare on it.\n",
            Messages.ToString());
        Assert.Empty(Answers.ToString());
    }

    [Fact]
    public void A_narrow_screen_wraps_each_part_under_its_own_beginning()
    {
        new ProblemPrinter(Terminal.ForScreen(Answers, Messages, 40, hasColours: false)).PrintWarning(FewCorners);

        Assert.Equal(
            "warning  Found 3 corners of the scale\n"
            + "         target; at least 12 are\n"
            + "         needed.\n"
            + "  where  photos/p07 [front].jpg\n"
            + " remedy  Retake the photo with the\n"
            + "         whole target in view and no\n"
            + "         glare on it.\n",
            WithoutEscapes(Messages.ToString()));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Colours_appear_on_a_screen_only_when_they_are_wanted(bool hasColours)
    {
        new ProblemPrinter(Terminal.ForScreen(Answers, Messages, 100, hasColours)).Print(FewCorners);

        // Select Graphic Rendition 30 to 38 and 90 to 97 set a foreground colour (ECMA-48, 8.3.117).
        var colours = System.Text.RegularExpressions.Regex.IsMatch(Messages.ToString(), @"\u001b\[[0-9;]*\b(3[0-8]|9[0-7])(?=[;m])");
        Assert.Equal(hasColours, colours);
    }

    [Fact]
    public void Control_codes_in_a_file_name_do_not_reach_the_screen()
    {
        new ProblemPrinter(Terminal.ForWriters(Answers, Messages)).Print(FewCorners with { Where = $"a{Escape}[2J\nb.jpg" });

        Assert.DoesNotContain(Escape, Messages.ToString());
        Assert.Contains("  where  a [2J b.jpg\n", Messages.ToString(), StringComparison.Ordinal);
    }

    private static string WithoutEscapes(string text) => System.Text.RegularExpressions.Regex.Replace(text, @"\u001b\[[0-9;]*m", string.Empty);
}
