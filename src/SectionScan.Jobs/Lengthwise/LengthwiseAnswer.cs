using SectionScan.Jobs.Digitising;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Lengthwise;

namespace SectionScan.Jobs.Lengthwise;

/// <summary>A lengthwise shape as one document for programs. Lengths in mm, angles in degrees; lines run from the face to the seat.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Name">The shape's name.</param>
/// <param name="Floor">The floor, x and y.</param>
/// <param name="Roof">The roof.</param>
/// <param name="Centreline">Distance from the face, x, y, height square to the centreline, u of that height.</param>
/// <param name="FaceHeight">The height at the manifold face.</param>
/// <param name="SeatHeight">The height at the valve seat.</param>
/// <param name="FloorTurn">The radius of the floor's turn (short-side radius).</param>
/// <param name="RoofTurn">The radius of the roof's turn.</param>
/// <param name="Comparison">Against the reference, or null.</param>
/// <param name="Warnings">What the person should know.</param>
/// <param name="Files">The files written.</param>
public sealed record LengthwiseAnswer(
    string Schema, string Name, IReadOnlyList<double[]> Floor, IReadOnlyList<double[]> Roof, IReadOnlyList<double[]> Centreline,
    DigitiseAnswer.MeasurePart FaceHeight, DigitiseAnswer.MeasurePart SeatHeight,
    LengthwiseAnswer.TurnPart FloorTurn, LengthwiseAnswer.TurnPart RoofTurn, LengthwiseAnswer.ComparisonPart? Comparison,
    IReadOnlyList<string> Warnings, IReadOnlyList<string> Files)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/lengthwise/1";

    /// <summary>Makes the answer.</summary>
    public static LengthwiseAnswer Of(LengthwiseOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var shape = outcome.Shape;
        var u = new LengthwiseUncertainty(shape);
        return new(
            SchemaName, shape.Name, Points(shape.Floor), Points(shape.Roof),
            [.. shape.Centreline.Select(p => new[] { p.DistanceMm, p.Place.XMm, p.Place.YMm, p.HeightMm, u.Height(p).StandardUncertainty })],
            DigitiseAnswer.MeasurePart.Of((u.Height(shape.Face), "mm")), DigitiseAnswer.MeasurePart.Of((u.Height(shape.Seat), "mm")),
            TurnPart.Of(shape.FloorRadius, shape.FloorRadii), TurnPart.Of(shape.RoofRadius, shape.RoofRadii),
            outcome.Comparison is { } comparison ? ComparisonPart.Of(comparison) : null, outcome.Warnings, outcome.Files);
    }

    private static double[][] Points(Profile line) => [.. line.Points.ToArray().Select(p => new[] { p.XMm, p.YMm })];

    /// <summary>A wall's turn.</summary>
    /// <param name="Radius">The one radius of the turn; null when there is none.</param>
    /// <param name="ArcDeg">The arc that it was taken over.</param>
    /// <param name="ResidualMm">How far the wall strays from that circle, rms.</param>
    /// <param name="Centre">The circle's centre.</param>
    /// <param name="WhyNot">Why there is no radius, or null.</param>
    /// <param name="Along">Place by place: x, y, radius (negative where the wall turns back), u.</param>
    public sealed record TurnPart(
        DigitiseAnswer.MeasurePart? Radius, double? ArcDeg, double? ResidualMm, double[]? Centre, string? WhyNot, IReadOnlyList<double[]> Along)
    {
        internal static TurnPart Of(Result<ArcRadius> found, IReadOnlyList<LocalRadius> along)
        {
            double[][] places = [.. along.Select(l => new[]
            {
                l.Place.XMm, l.Place.YMm, Math.Sign(l.Radius.Arc.Radians) * l.Radius.RadiusMm.Value, l.Radius.RadiusMm.StandardUncertainty,
            })];
            return found.TryGet(out var radius, out var problem)
                ? new(
                    DigitiseAnswer.MeasurePart.Of((radius.RadiusMm, "mm")), Math.Abs(radius.Arc.Degrees), radius.ResidualRmsMm, [radius.Centre.XMm, radius.Centre.YMm],
                    null, places)
                : new(null, null, null, null, problem.What, places);
        }
    }

    /// <summary>Against a reference: + where the measured wall lies outside it (metal already gone), − where metal is left.</summary>
    /// <param name="Reference">The reference's name.</param>
    /// <param name="MeanFloorRiseMm">How much the floor rises in the mean, toward the roof positive.</param>
    /// <param name="HighestFloorRise">Where the floor rises most: length along the reference's floor, x, y, rise.</param>
    /// <param name="DeepestFloorRise">Where it rises least or falls most.</param>
    /// <param name="DeviationUMm">u of a deviation where the edge is as sure as usual; null when not known.</param>
    /// <param name="Floor">Length along the floor, x, y, deviation, u of it (null when not known).</param>
    /// <param name="Roof">The same along the roof.</param>
    public sealed record ComparisonPart(
        string Reference, double MeanFloorRiseMm, double[] HighestFloorRise, double[] DeepestFloorRise, double? DeviationUMm,
        IReadOnlyList<double?[]> Floor, IReadOnlyList<double?[]> Roof)
    {
        internal static ComparisonPart Of(LengthwiseComparison comparison) => new(
            comparison.Reference.Name, comparison.MeanFloorRiseMm, Rise(comparison.HighestFloor), Rise(comparison.DeepestFloor),
            Known(comparison.UsualStandardUncertaintyMm),
            Samples(comparison.Floor, comparison.FloorStandardUncertaintyMm), Samples(comparison.Roof, comparison.RoofStandardUncertaintyMm));

        private static double[] Rise(ProfileSample sample) => [sample.LengthMm, sample.Place.XMm, sample.Place.YMm, -sample.DeviationMm];

        private static double?[][] Samples(IReadOnlyList<ProfileSample> samples, Func<ProfileSample, double> u) =>
            [.. samples.Select(s => new[] { s.LengthMm, s.Place.XMm, s.Place.YMm, s.DeviationMm, Known(u(s)) })];

        private static double? Known(double u) => double.IsNaN(u) ? null : u;
    }
}
