using SectionScan.Imaging.Edges;

namespace SectionScan.Imaging.Tests.Edges;

/// <summary>Against every window sorted by the library.</summary>
public sealed class RunningMedianTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(8)]
    public void Running_medians_are_those_of_every_window_sorted(int reach)
    {
        var random = new Random(reach);
        double[] values = [.. Enumerable.Range(0, 60).Select(_ => Math.Round(random.NextDouble(), 1))];

        var medians = RunningMedian.Of(values, reach);

        for (var i = 0; i < values.Length; i++)
        {
            var window = Enumerable.Range(i - reach, (2 * reach) + 1).Select(k => values[(k + values.Length) % values.Length]).Order().ToArray();
            Assert.Equal(window[reach], medians[i]);
        }
    }
}
