using System.Text.Json.Serialization;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.Ports;

/// <summary>A schedule as one document for programs. Lengths in mm, areas in mm², volumes in mm³, angles in degrees.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Port">The port's name.</param>
/// <param name="Kind">intake or exhaust.</param>
/// <param name="LengthMm">From the first to the last station.</param>
/// <param name="Stations">The stations.</param>
/// <param name="Taper">From each station to the next.</param>
/// <param name="Volume">The volume.</param>
/// <param name="Burette">The check, or null.</param>
/// <param name="Comparisons">Comparisons with other ports.</param>
/// <param name="Judgements">What is flagged.</param>
public sealed record ScheduleAnswer(
    string Schema, string Port, string Kind, double LengthMm, IReadOnlyList<ScheduleAnswer.StationPart> Stations,
    IReadOnlyList<ScheduleAnswer.TaperPart> Taper, ScheduleAnswer.VolumePart Volume, ScheduleAnswer.BurettePart? Burette,
    IReadOnlyList<ScheduleAnswer.ComparisonPart> Comparisons, IReadOnlyList<ScheduleAnswer.JudgementPart> Judgements)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/schedule/1";

    /// <summary>Makes the answer.</summary>
    public static ScheduleAnswer Of(ScheduleStudy study, IReadOnlyList<ScheduleComparison> comparisons)
    {
        ArgumentNullException.ThrowIfNull(study);
        return new(
            SchemaName, study.Port.Name, study.Port.Kind == Porting.Ports.PortKind.Intake ? "intake" : "exhaust", study.Schedule.LengthMm,
            [.. study.Schedule.Stations.Select(s => new StationPart(
                s.Position.Station, s.Position.DistanceMm, s.Position.Tilt.Degrees, ValuePart.Of(s.AreaMm2), ValuePart.Of(s.WidthMm),
                ValuePart.Of(s.HeightMm), ValuePart.Of(s.HydraulicDiameterMm), ValuePart.Of(s.PerimeterMm)))],
            [.. ScheduleTaper.Intervals(study.Schedule).Select(t => new TaperPart(
                t.From.Position.Station, t.To.Position.Station, t.LengthMm, ValuePart.Of(t.AreaChangeMm2), ValuePart.Of(t.PercentPer10Mm), t.ConeAngle.Degrees))],
            new(study.Volume.FromMm, study.Volume.ToMm, ValuePart.Of(study.Volume.VolumeMm3), study.Volume.BeyondStationsMm3,
                [.. study.Volume.Budget.Rows.Select(row => new BudgetPart(row.Source, row.StandardUncertainty))]),
            study.Burette is { } b ? new(ValuePart.Of(b.BuretteMm3), ValuePart.Of(b.DifferenceMm3), b.NormalisedError, b.Agrees, b.DistanceFactor, b.SectionScaleFactor) : null,
            [.. comparisons.Select(c => new ComparisonPart(
                c.Reference, c.Axis == ScheduleAxis.Share ? "share" : "distance", c.MeanPercent,
                [.. c.Samples.Select(s => new SamplePart(s.At, ValuePart.Of(s.ReferenceMm2), ValuePart.Of(s.MeasuredMm2), ValuePart.Of(s.DifferencePercent), s.IsSure))]))],
            [.. study.Judgements.Select(JudgementPart.Of)]);
    }

    /// <summary>A value with u (k = 1) and U (k = 2).</summary>
    public sealed record ValuePart(
        double Value, [property: JsonPropertyName("u")] double StandardU, [property: JsonPropertyName("U")] double ExpandedU)
    {
        internal static ValuePart Of(Estimate estimate) => new(estimate.Value, estimate.StandardUncertainty, estimate.ExpandedUncertainty);
    }

    /// <summary>A station.</summary>
    public sealed record StationPart(
        int Station, double DistanceMm, double TiltDeg, ValuePart AreaMm2, ValuePart WidthMm, ValuePart HeightMm,
        ValuePart HydraulicDiameterMm, ValuePart PerimeterMm);

    /// <summary>From one station to the next.</summary>
    public sealed record TaperPart(
        int FromStation, int ToStation, double LengthMm, ValuePart AreaChangeMm2, ValuePart PercentPer10Mm, double ConeAngleDeg);

    /// <summary>The volume.</summary>
    public sealed record VolumePart(double FromMm, double ToMm, ValuePart VolumeMm3, double BeyondStationsMm3, IReadOnlyList<BudgetPart> Budget);

    /// <summary>A row of the volume's budget, mm³.</summary>
    public sealed record BudgetPart(string Source, [property: JsonPropertyName("u")] double StandardU);

    /// <summary>The check against a burette.</summary>
    public sealed record BurettePart(
        ValuePart VolumeMm3, ValuePart DifferenceMm3, double NormalisedError, bool Agrees, double DistanceFactor, double SectionScaleFactor);

    /// <summary>A comparison.</summary>
    public sealed record ComparisonPart(string Reference, string By, double MeanPercent, IReadOnlyList<SamplePart> Samples);

    /// <summary>One place of a comparison.</summary>
    public sealed record SamplePart(double At, ValuePart ReferenceMm2, ValuePart MeasuredMm2, ValuePart DifferencePercent, bool IsSure);

    /// <summary>A judgement.</summary>
    public sealed record JudgementPart(string Code, string Level, string Finding, string Consequence, string Basis)
    {
        internal static JudgementPart Of(Judgement judgement)
        {
            ArgumentNullException.ThrowIfNull(judgement);
            var level = judgement.Level switch { JudgementLevel.Usual => "usual", JudgementLevel.Look => "look", _ => "outside" };
            return new(judgement.Code, level, judgement.Finding.ToString(), judgement.Consequence.ToString(), judgement.Basis);
        }
    }
}
