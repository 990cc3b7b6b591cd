using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Joints;
using SectionScan.Testing.Shapes;

namespace SectionScan.Porting.Tests.Joints;

public class JointMatchingTests
{
    private static readonly OutlineErrorSource[] Edge = [new("edge", [new NormalOffsetEffect(0.01)])];

    [Fact]
    public void An_intake_manifold_that_is_wider_asks_for_a_cut_of_the_port()
    {
        var match = Match(JointFlow.Intake, portRadius: 18, manifoldRadius: 18.5);

        var opening = Assert.Single(match.Openings);
        var stretch = Assert.Single(opening.Stretches);
        Assert.Equal(JointSide.Port, stretch.Side);
        Assert.True(stretch.IsFacingFlow);
        Assert.Equal(JointSide.Port, match.Downstream);
        Assert.All(opening.Steps, step => Assert.Equal(0.5, step.DeviationMm, 0.001));

        // π(18.5² − 18²)
        Assert.Equal(57.3341, opening.RemovedMm2.Value, 0.01);
    }

    [Fact]
    public void An_intake_manifold_that_is_narrower_leaves_a_step_that_may_stay()
    {
        var match = Match(JointFlow.Intake, portRadius: 18.5, manifoldRadius: 18);

        var opening = Assert.Single(match.Openings);
        Assert.False(Assert.Single(opening.Stretches).IsFacingFlow);
        Assert.Equal(0, opening.RemovedMm2.Value, 1e-6);
    }

    [Theory]
    [InlineData(18, 18.5, false)]
    [InlineData(18.5, 18, true)]
    public void At_an_exhaust_it_is_the_manifold_that_faces_the_flow(double port, double manifold, bool isFacing)
    {
        var stretch = Assert.Single(Match(JointFlow.Exhaust, port, manifold).Openings[0].Stretches);

        Assert.Equal(isFacing, stretch.IsFacingFlow);
        Assert.Equal(isFacing ? JointSide.Manifold : JointSide.Port, stretch.Side);
    }

    [Theory]
    [InlineData(JointFlow.Intake)]
    [InlineData(JointFlow.Exhaust)]
    public void After_the_cut_nothing_of_the_downstream_part_stands_inside_the_upstream_opening(JointFlow flow)
    {
        var port = Face("port", AnalyticShapes.Superellipse(17, 19, 2.6), AnalyticShapes.Superellipse(17, 19, 2.6).Moved(52, 0.4));
        var manifold = Face("manifold", AnalyticShapes.Superellipse(17.5, 18.6, 2.3), AnalyticShapes.Superellipse(17.2, 19.3, 2.4).Moved(51.5, 0));

        var match = JointMatching.Match(new(port, manifold, flow, new())).ValueOrThrow();

        Assert.All(match.Openings, opening =>
        {
            Assert.Contains(opening.Stretches, stretch => stretch.IsFacingFlow);
            var upstream = flow == JointFlow.Intake ? opening.Manifold.Outline : opening.Port.Outline;
            Assert.All(OutlineComparison.Samples(upstream, opening.CutTo), step => Assert.True(step.DeviationMm > -1e-6));
        });
    }

    [Fact]
    public void Faces_photographed_from_their_own_fronts_are_laid_together_mirrored()
    {
        var shape = AnalyticShapes.SixCorners().Moved(-20, -13);
        var second = shape.Scaled(0.8).Moved(60, 3);
        var port = Face("port", shape, second);
        var manifold = new JointFace("manifold", [.. port.Openings.Select(o => o.Moved(SimilarityTransform.Identity with { IsMirrored = true }))], [], false);

        var match = JointMatching.Match(new(port, manifold, JointFlow.Intake, new())).ValueOrThrow();

        Assert.All(match.Openings, opening => Assert.InRange(opening.RmsStepMm, 0, 0.001));
        Assert.All(match.Openings, opening => Assert.Equal(0, opening.Port.Outline[0].DistanceTo(port.Openings[match.Openings.ToList().IndexOf(opening)].Outline[0]), 1e-9));
    }

    [Fact]
    public void Steps_within_their_uncertainty_are_no_edges()
    {
        var match = Match(JointFlow.Intake, portRadius: 18, manifoldRadius: 18.02);

        Assert.Empty(match.Openings[0].Stretches);

        // Two walls of u 0.01: U = 2·√2·0.01.
        Assert.Equal(0.02828, match.Openings[0].LimitMm, 1e-4);
    }

    [Fact]
    public void The_studs_clearance_limits_the_shift()
    {
        SectionPoint[] studs = [new(-40, 0), new(40, 0)];
        var port = Face("port", AnalyticShapes.Circle(18)) with { Studs = studs };
        var manifold = Face("manifold", AnalyticShapes.Circle(18).Moved(0, -1)) with { Studs = studs };

        var match = JointMatching.Match(new(port, manifold, JointFlow.Intake, new() { ClearanceMm = 0.6 })).ValueOrThrow();

        Assert.Equal(0.3, match.Placement.ShiftYMm, 0.001);
        Assert.Contains(match.Warnings, warning => warning.ToString().Contains("freedom ends", StringComparison.Ordinal));
        Assert.All(match.ManifoldStuds.Zip(match.PortStuds), pair => Assert.InRange(pair.First.DistanceTo(pair.Second), 0, 0.301));
    }

    [Fact]
    public void A_gasket_is_told_where_it_stands_in_the_flow_and_where_it_leaves_a_pocket()
    {
        var order = new JointOrder(
            Face("port", AnalyticShapes.Circle(18)), Face("manifold", AnalyticShapes.Circle(18.5)), JointFlow.Intake, new());

        var narrow = JointMatching.Match(order with { Gasket = Face("gasket", AnalyticShapes.Circle(18.2)) }).ValueOrThrow().Openings[0].Gasket!;
        var wide = JointMatching.Match(order with { Gasket = Face("gasket", AnalyticShapes.Circle(19.5)) }).ValueOrThrow().Openings[0].Gasket!;

        Assert.Equal(-0.3, narrow.DeepestInFlow!.DeviationMm, 0.001);
        Assert.Null(narrow.WidestPocket);
        Assert.Equal(1, wide.WidestPocket!.DeviationMm, 0.001);
        Assert.Null(wide.DeepestInFlow);
    }

    [Fact]
    public void A_joint_that_cannot_be_matched_says_why()
    {
        var one = Face("port", AnalyticShapes.Circle(18));
        var two = Face("manifold", AnalyticShapes.Circle(18), AnalyticShapes.Circle(18).Moved(50, 0));
        SectionPoint[] studs = [new(-40, 0), new(40, 0)];
        var near = one with { Studs = studs };
        var far = one with { Name = "manifold", Studs = [new(-40, 0), new(42, 0)] };

        Assert.Equal("joint-no-opening", Code(new(one with { Openings = [] }, two, JointFlow.Intake, new())));
        Assert.Equal("joint-openings-differ", Code(new(one, two, JointFlow.Intake, new())));
        Assert.Equal("joint-clearance-without-studs", Code(new(one, one, JointFlow.Intake, new() { ClearanceMm = 1 })));
        Assert.Equal("joint-studs-differ", Code(new(near, one, JointFlow.Intake, new() { ClearanceMm = 1 })));
        Assert.Equal("joint-studs-do-not-fit", Code(new(near, far, JointFlow.Intake, new() { ClearanceMm = 1 })));
        Assert.Equal("joint-openings-apart", Code(new(
            near, near with { Name = "manifold", Openings = Face("x", AnalyticShapes.Circle(18).Moved(0, 60)).Openings }, JointFlow.Intake, new() { ClearanceMm = 1 })));

        static string? Code(JointOrder order) => JointMatching.Match(order).TryGet(out _, out var problem) ? null : problem.Code;
    }

    private static JointMatch Match(JointFlow flow, double portRadius, double manifoldRadius) => JointMatching.Match(new(
        Face("port", AnalyticShapes.Circle(portRadius)), Face("manifold", AnalyticShapes.Circle(manifoldRadius).Moved(3, 2)), flow, new())).ValueOrThrow();

    private static JointFace Face(string name, params Outline[] outlines) =>
        new(name, [.. outlines.Select((outline, k) => new JointOpening($"{name} {k + 1}", outline, Edge))], [], true);
}
