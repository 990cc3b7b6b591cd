using SectionScan.Imaging.Edges;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Tests.Edges;

/// <summary>The shortcut to the nearest point, against all points.</summary>
public sealed class ClosedCurveTests
{
    [Fact]
    public void The_nearest_point_of_a_curve_is_the_nearest_of_all()
    {
        var curve = ClosedCurve.Through(
            [.. Enumerable.Range(0, 90).Select(i => Math.Tau * i / 90).Select(a => new TargetPoint((20 + (4 * Math.Cos(3 * a))) * Math.Cos(a), 15 * Math.Sin(a)))],
            0.3, 0);
        var random = new Random(5);
        for (var round = 0; round < 200; round++)
        {
            var place = new TargetPoint((random.NextDouble() * 60) - 30, (random.NextDouble() * 40) - 20);
            Assert.Equal(curve.Points.Min(p => p.DistanceTo(place)), curve.NearestTo(place).DistanceTo(place), 1e-9);
        }
    }
}
