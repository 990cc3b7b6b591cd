namespace SectionScan.Cli.Tests;

public class ExitCodeTests
{
    [Theory]
    [InlineData(3, 0, 0)]
    [InlineData(2, 1, 4)]
    [InlineData(0, 3, 3)]
    [InlineData(0, 0, 0)]
    public void A_batch_tells_all_none_and_some_apart(int usable, int unusable, int expected) =>
        Assert.Equal(expected, ExitCode.OfBatch(usable, unusable));

    [Fact]
    public void Counts_cannot_be_negative()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ExitCode.OfBatch(-1, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ExitCode.OfBatch(0, -1));
    }
}
