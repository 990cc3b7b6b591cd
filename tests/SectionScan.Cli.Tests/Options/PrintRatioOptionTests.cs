using SectionScan.Cli.Options;

namespace SectionScan.Cli.Tests.Options;

public class PrintRatioOptionTests
{
    [Theory]
    [InlineData("0.998,1.002", 0.998, 1.002)]
    [InlineData(" 1 , 1.0 ", 1, 1)]
    [InlineData("0.8,1.25", 0.8, 1.25)]
    public void Two_ratios_are_read(string text, double x, double y) =>
        Assert.Equal(new PrintRatioOption(x, y), PrintRatioOption.Parse(text).ValueOrThrow());

    [Theory]
    [InlineData("")]
    [InlineData("1")]
    [InlineData("1,")]
    [InlineData("1;1")]
    [InlineData("0,998,1,002")]
    [InlineData("one,two")]
    [InlineData("1e0,1")]
    public void Anything_but_two_numbers_is_refused(string text) =>
        Assert.Equal("print-ratio-not-two-numbers", CodeOf(text));

    [Theory]
    [InlineData("0.799,1")]
    [InlineData("1,1.251")]
    [InlineData("-1,1")]
    [InlineData("0,0")]
    [InlineData("99.8,100.2")]
    [InlineData("199.6,150.3")]
    public void Ratios_that_no_print_has_are_refused(string text) =>
        Assert.Equal("print-ratio-out-of-range", CodeOf(text));

    private static string CodeOf(string text)
    {
        Assert.False(PrintRatioOption.Parse(text).TryGet(out _, out var problem));
        return problem.Code;
    }
}
