using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Tests.Comparison;

public class HandPlacingTests
{
    /// <summary>The mean square of the lever r × n round a rectangle a by b: on the sides of length a it is the place along them, whose mean
    /// square is a²/12 (any table of second moments), so that all round it is (a³ + b³)/(12 (a + b)).</summary>
    [Theory]
    [InlineData(60, 20)]
    [InlineData(40, 40)]
    public void A_turn_by_hand_counts_by_its_lever(double a, double b)
    {
        var outline = Outline.From(Sides(a, b)).ValueOrThrow();
        var samples = OutlineComparison.Compare(outline, new AlignedOutline(outline, SimilarityTransform.Identity)).Samples;
        var lever = ((a * a * a) + (b * b * b)) / (12 * (a + b));
        var (place, turn) = (0.1 / Math.Sqrt(3), 0.1 * Math.PI / 180 / Math.Sqrt(3));

        Assert.Equal(Math.Sqrt((place * place) + (turn * turn * lever)), HandPlacing.StandardUncertaintyMm(samples, new(0, 0)), 0.001);
    }

    private static IEnumerable<SectionPoint> Sides(double a, double b)
    {
        const int Steps = 200;
        (double X, double Y)[] corners = [(-a / 2, -b / 2), (a / 2, -b / 2), (a / 2, b / 2), (-a / 2, b / 2)];
        for (var i = 0; i < 4; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % 4]);
            for (var k = 0; k < Steps; k++)
            {
                yield return new(from.X + ((to.X - from.X) * k / Steps), from.Y + ((to.Y - from.Y) * k / Steps));
            }
        }
    }
}
