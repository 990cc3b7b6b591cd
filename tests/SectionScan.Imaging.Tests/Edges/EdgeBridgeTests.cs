using SectionScan.Imaging.Edges;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Tests.Edges;

public sealed class EdgeBridgeTests
{
    /// <summary>A circle of 30 mm with a bite 0.4 mm deep over 3 mm: a cubic from both ends of so short an arc keeps to the circle within a
    /// hundredth.</summary>
    [Fact]
    public void A_bite_stands_off_the_bridge_by_its_depth()
    {
        var curve = ClosedCurve.Through(
            [.. Enumerable.Range(0, 720).Select(i => Math.Tau * i / 720).Select(a => (Angle: a, Radius: 30 - (0.4 * Math.Exp(-Math.Pow((a - Math.PI) * 30 / 0.8, 2)))))
                .Select(p => new TargetPoint(p.Radius * Math.Cos(p.Angle), p.Radius * Math.Sin(p.Angle)))],
            0.3, 0);
        bool IsSound(int i) => curve.Points[i].DistanceTo(new(-30, 0)) > 2.5;

        var deepest = Enumerable.Range(0, curve.Points.Length).MinBy(i => curve.Points[i].DistanceTo(new(-29.6, 0)));

        Assert.Equal(0.4, EdgeBridge.DistanceMm(curve, deepest, IsSound), 0.03);
    }

    [Fact]
    public void An_outline_shorter_than_the_reach_is_bridged_too()
    {
        var curve = ClosedCurve.Through(
            [.. Enumerable.Range(0, 60).Select(i => Math.Tau * i / 60).Select(a => new TargetPoint(0.3 * Math.Cos(a), 0.3 * Math.Sin(a)))], 0.3, 0);

        Assert.All(Enumerable.Range(0, curve.Points.Length), i => Assert.InRange(EdgeBridge.DistanceMm(curve, i, k => k != i), 0, 1));
    }
}
