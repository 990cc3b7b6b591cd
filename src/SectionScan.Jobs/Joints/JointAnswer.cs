using System.Text.Json.Serialization;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.Joints;

namespace SectionScan.Jobs.Joints;

/// <summary>A matched joint as one document for programs. Lengths in mm, angles in degrees, all as seen with the flow in the port face's
/// frame.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Flow">Intake or exhaust.</param>
/// <param name="Sign">What the sign of a step means.</param>
/// <param name="Downstream">The part whose edges can face the flow.</param>
/// <param name="Placement">Where the manifold came to lie.</param>
/// <param name="Openings">The openings from left to right.</param>
/// <param name="Warnings">What the person should know.</param>
/// <param name="Cautions">What to mind before cutting; empty when nothing need be cut.</param>
/// <param name="Files">The files written.</param>
public sealed record JointAnswer(
    string Schema, JointFlow Flow, string Sign, JointSide Downstream, JointAnswer.PlacementPart Placement,
    IReadOnlyList<JointAnswer.OpeningPart> Openings, IReadOnlyList<string> Warnings, IReadOnlyList<string> Cautions, IReadOnlyList<string> Files)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/joint/1";

    /// <summary>Makes the answer.</summary>
    public static JointAnswer Of(JointOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var match = outcome.Match;
        return new(
            SchemaName, match.Order.Flow, "+ where the manifold's opening is wider than the port's, - where it is narrower", match.Downstream,
            PlacementPart.Of(match), [.. match.Openings.Select(OpeningPart.Of)], [.. match.Warnings.Select(warning => warning.ToString())],
            match.IsCutNeeded ? [JointMatch.Caution] : [], outcome.Files);
    }

    /// <summary>Where the manifold came to lie.</summary>
    /// <param name="ShiftXMm">The move of its middle from the start, to the right.</param>
    /// <param name="ShiftYMm">The move up.</param>
    /// <param name="TurnDeg">The turn from the start, counter-clockwise.</param>
    /// <param name="UShiftXMm">u of the move to the right; null when not known.</param>
    /// <param name="UShiftYMm">u of the move up.</param>
    /// <param name="UTurnDeg">u of the turn.</param>
    /// <param name="RmsMm">The root mean square distance of the edges.</param>
    /// <param name="IsAtLimit">True when the joint's freedom ended there.</param>
    /// <param name="Transform">From the manifold's own frame, y up: mirrored (or not), turned about its origin, then moved.</param>
    public sealed record PlacementPart(
        double ShiftXMm, double ShiftYMm, double TurnDeg, double? UShiftXMm, double? UShiftYMm, double? UTurnDeg, double RmsMm, bool IsAtLimit,
        TransformPart Transform)
    {
        internal static PlacementPart Of(JointMatch match)
        {
            var (placed, u) = (match.Placement, match.PlacementUncertainty);
            var isMirrored = !match.Order.Manifold.IsSeenWithFlow;
            return new(
                placed.ShiftXMm, placed.ShiftYMm, placed.Turn.Degrees, u?.XMm, u?.YMm, u is null ? null : double.RadiansToDegrees(u.TurnRad), placed.RmsMm,
                placed.IsAtLimit, new(isMirrored, placed.Transform.Turn.Degrees, placed.Transform.XMm, placed.Transform.YMm));
        }
    }

    /// <summary>A rigid motion: mirrored first, then turned, then moved.</summary>
    public sealed record TransformPart(bool Mirrored, double TurnDeg, double XMm, double YMm);

    /// <summary>One opening.</summary>
    public sealed record OpeningPart(
        string Port, string Manifold, AreasPart Areas, StepPart Step, IReadOnlyList<StretchPart> Stretches, GasketPart? Gasket,
        IReadOnlyList<double[]> PortOutline, IReadOnlyList<double[]> ManifoldOutline, IReadOnlyList<double[]> CutTo, IReadOnlyList<double[]> Steps)
    {
        internal static OpeningPart Of(OpeningMatch opening) => new(
            opening.Port.Name, opening.Manifold.Name,
            new(
                DigitiseAnswer.MeasurePart.Of((opening.PortAreaMm2, "mm2")), DigitiseAnswer.MeasurePart.Of((opening.ManifoldAreaMm2, "mm2")),
                DigitiseAnswer.MeasurePart.Of((opening.CutToAreaMm2, "mm2")), DigitiseAnswer.MeasurePart.Of((opening.RemovedMm2, "mm2"))),
            new(
                ComparisonAnswer.ExtremePart.Of(opening.Highest), ComparisonAnswer.ExtremePart.Of(opening.Lowest), opening.RmsStepMm,
                double.IsNaN(opening.StepStandardUncertaintyMm) ? null : 2 * opening.StepStandardUncertaintyMm, opening.LimitMm),
            [.. opening.Stretches.Select(StretchPart.Of)], opening.Gasket is { } gasket ? GasketPart.Of(gasket) : null,
            Points(opening.Port.Outline), Points(opening.Manifold.Outline), Points(opening.CutTo),
            [.. opening.Steps.Select(s => new[] { s.Reference.XMm, s.Reference.YMm, s.Direction.Degrees, s.DeviationMm })]);

        private static double[][] Points(Outline outline) => [.. outline.Points.ToArray().Select(p => new[] { p.XMm, p.YMm })];
    }

    /// <summary>The areas before and after the cut; removed is what the cut takes from the downstream part.</summary>
    public sealed record AreasPart(
        DigitiseAnswer.MeasurePart Port, DigitiseAnswer.MeasurePart Manifold, DigitiseAnswer.MeasurePart DownstreamAfterCut, DigitiseAnswer.MeasurePart Removed);

    /// <summary>The step round the opening; U with k = 2.</summary>
    public sealed record StepPart(
        ComparisonAnswer.ExtremePart Highest, ComparisonAnswer.ExtremePart Lowest, double RmsMm,
        [property: JsonPropertyName("U")] double? ExpandedU, double LeftAloneWithinMm);

    /// <summary>A stretch with a step of one sign.</summary>
    public sealed record StretchPart(
        JointSide Side, bool FacesFlow, double FromDeg, double ToDeg, string FromRegion, string ToRegion, double LengthMm, double MeanStepMm,
        ComparisonAnswer.ExtremePart Deepest)
    {
        internal static StretchPart Of(JointStretch stretch) => new(
            stretch.Side, stretch.IsFacingFlow, stretch.From.Direction.Degrees, stretch.To.Direction.Degrees, RegionWords.Of(stretch.From.Region),
            RegionWords.Of(stretch.To.Region), stretch.LengthMm, stretch.MeanStepMm, ComparisonAnswer.ExtremePart.Of(stretch.Deepest));
    }

    /// <summary>The gasket against the opening after the cut; null where it neither stands in the flow nor leaves a pocket.</summary>
    public sealed record GasketPart(ComparisonAnswer.ExtremePart? DeepestInFlow, ComparisonAnswer.ExtremePart? WidestPocket)
    {
        internal static GasketPart Of(GasketMatch gasket) => new(Extreme(gasket.DeepestInFlow), Extreme(gasket.WidestPocket));

        private static ComparisonAnswer.ExtremePart? Extreme(DeviationSample? sample) => sample is null ? null : ComparisonAnswer.ExtremePart.Of(sample);
    }
}
