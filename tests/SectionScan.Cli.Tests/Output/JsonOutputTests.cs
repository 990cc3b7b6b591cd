using SectionScan.Cli.Output;
using SectionScan.Cli.Terminals;

namespace SectionScan.Cli.Tests.Output;

public class JsonOutputTests : TerminalTest
{
    [Fact]
    public void Names_are_camel_case_words_readable_and_the_line_ends_in_a_newline()
    {
        New().Write(new { WidthMm = 36.169300000000001, Side = DayOfWeek.Monday, Note = "12° <é>", Nothing = (string?)null });

        Assert.Equal("{\"widthMm\":36.1693,\"side\":\"monday\",\"note\":\"12° <é>\",\"nothing\":null}\n", Answers.ToString());
        Assert.Empty(Messages.ToString());
    }

    [Fact]
    public void A_long_document_is_not_folded()
    {
        New().Write(Enumerable.Repeat(1.25, 2000).ToArray());

        Assert.Equal(1, Answers.ToString().Count(c => c == '\n'));
    }

    [Fact]
    public void A_second_document_is_refused()
    {
        var json = New();
        json.Write(new { First = true });

        Assert.Throws<InvalidOperationException>(() => json.Write(new { First = false }));
        Assert.Equal("{\"first\":true}\n", Answers.ToString());
    }

    [Fact]
    public void A_number_that_is_none_leaves_standard_output_empty()
    {
        Assert.Throws<ArgumentException>(() => New().Write(new { First = 1, AreaMm2 = double.NaN }));
        Assert.Empty(Answers.ToString());
    }

    private JsonOutput New() => new(Terminal.ForWriters(Answers, Messages));
}
