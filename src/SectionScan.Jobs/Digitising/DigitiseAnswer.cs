using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Digitising;

/// <summary>The answer to "digitise" as one document for programs.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Results">One for each photo.</param>
public sealed record DigitiseAnswer(string Schema, IReadOnlyList<DigitiseAnswer.PhotoResult> Results)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/digitise/1";

    /// <summary>Makes the answer.</summary>
    /// <param name="outcomes">What became of each photo.</param>
    /// <param name="isInch">True when measures are wanted in inches; outlines stay in millimetres.</param>
    public static DigitiseAnswer Of(IEnumerable<PhotoOutcome> outcomes, bool isInch) =>
        new(SchemaName, [.. outcomes.Select(o => PhotoResult.Of(o, isInch))]);

    /// <summary>One photo's result.</summary>
    public sealed record PhotoResult(
        PhotoPart Photo, string Status, ErrorPart? Error, TargetPart? Target, CameraPart? Camera,
        IReadOnlyList<SectionPart> Sections, IReadOnlyList<string> Warnings)
    {
        internal static PhotoResult Of(PhotoOutcome outcome, bool isInch)
        {
            var digitised = outcome.Digitised;
            var error = outcome.Problem is { } p ? new ErrorPart(p.Code, p.What, p.Remedy) : null;
            var photo = digitised?.Photo is { } facts
                ? new PhotoPart(facts.File, facts.Sha256, facts.WidthPx, facts.HeightPx, facts.Camera, facts.TakenAt)
                : new PhotoPart(Path.GetFileName(outcome.Path), null, null, null, null, null);
            IReadOnlyList<string> warnings = digitised is null
                ? []
                : [.. digitised.Warnings, .. digitised.Refused.Select(r => r.InWords())];
            return new(
                photo, error is null ? "ok" : "failed", error,
                digitised is null ? null : TargetPart.Of(digitised.Target), digitised is null ? null : CameraPart.Of(digitised.Camera),
                [.. outcome.Documents.Select((d, i) => SectionPart.Of(d, digitised?.Sections[i].Cautions ?? [], isInch))], warnings);
        }
    }

    /// <summary>What identifies the photo.</summary>
    public sealed record PhotoPart(string File, string? Sha256, int? WidthPx, int? HeightPx, string? Camera, string? TakenAt);

    /// <summary>Why a photo failed, or what a person should know of a section: a stable code, what, and what to do.</summary>
    public sealed record ErrorPart(string Code, string Message, string Remedy);

    /// <summary>The target's fit.</summary>
    public sealed record TargetPart(string Kind, int CornersFound, int CornersExpected, double RmsPx, IReadOnlyList<double> PrintRatio)
    {
        internal static TargetPart Of(TargetFit fit) =>
            new(fit.Kind, fit.CornersFound, fit.CornersExpected, fit.RmsPx, [fit.PrintRatioX, fit.PrintRatioY]);
    }

    /// <summary>The camera.</summary>
    public sealed record CameraPart(string Source, double FocalPx, double HeightMm, double HeightUMm, double TiltDeg)
    {
        internal static CameraPart Of(CameraFacts facts) =>
            new(facts.Source, facts.FocalPx, facts.HeightMm, facts.HeightStandardUncertaintyMm, facts.TiltDeg);
    }

    /// <summary>A section.</summary>
    public sealed record SectionPart(
        int? Station, string Subject, double ThicknessMm, IReadOnlyList<double[]> Outline, IReadOnlyList<double[]> PlacedOutline,
        IReadOnlyDictionary<string, MeasurePart> Measures, IReadOnlyDictionary<string, IReadOnlyList<BudgetPart>> Budget,
        IReadOnlyList<string> Warnings, IReadOnlyList<ErrorPart> Cautions)
    {
        internal static SectionPart Of(DigitisedDocument done, IReadOnlyList<Problem> cautions, bool isInch)
        {
            var section = done.Document.Section;
            return new(
                section.Station, section.Subject == Porting.Sections.SectionSubject.Opening ? "opening" : "mould", section.ThicknessMm,
                [.. section.Outline.Points.ToArray().Select(p => new[] { p.XMm, p.YMm })],
                [.. done.Document.PlacedOutline.Select(p => new[] { p.XMm, p.YMm })],
                done.Measured.Quantities.ToDictionary(q => q.Measure.Name, q => MeasurePart.Of(MeasureUnits.In(q, isInch))),
                done.Measured.Quantities.ToDictionary(
                    q => q.Measure.Name,
                    q => (IReadOnlyList<BudgetPart>)[.. q.Budget.Rows.Select(r => new BudgetPart(
                        r.Source, r.StandardUncertainty * MeasureUnits.Factor(q.Measure, isInch)))]),
                section.Warnings, [.. cautions.Select(caution => new ErrorPart(caution.Code, caution.What, caution.Remedy))]);
        }
    }

    /// <summary>A measured value.</summary>
    /// <param name="Value">The best estimate.</param>
    /// <param name="StandardU">u, k = 1.</param>
    /// <param name="ExpandedU">U, k = 2.</param>
    /// <param name="Unit">The unit of all three.</param>
    public sealed record MeasurePart(
        double Value,
        [property: System.Text.Json.Serialization.JsonPropertyName("u")] double StandardU,
        [property: System.Text.Json.Serialization.JsonPropertyName("U")] double ExpandedU,
        string Unit)
    {
        internal static MeasurePart Of((Metrology.Quantities.Estimate Estimate, string Unit) measured) =>
            new(measured.Estimate.Value, measured.Estimate.StandardUncertainty, measured.Estimate.ExpandedUncertainty, measured.Unit);
    }

    /// <summary>One row of a budget.</summary>
    public sealed record BudgetPart(
        string Source, [property: System.Text.Json.Serialization.JsonPropertyName("u")] double StandardU);
}
