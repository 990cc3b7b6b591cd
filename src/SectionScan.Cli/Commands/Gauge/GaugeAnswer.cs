using System.Text.Json.Serialization;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Commands.Gauge;

/// <summary>The answer to "gauge" as one document for programs.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Status">"ok" or "failed".</param>
/// <param name="Errors">What stood in the way.</param>
/// <param name="File">Where the study was written.</param>
/// <param name="Unit">Unit of the lengths of this answer, "mm" or "in"; the study's file is in mm.</param>
/// <param name="EdgeBias">How far outward edges are read.</param>
/// <param name="ScaleBias">How much too large lengths are, relative.</param>
/// <param name="Repeatability">Standard deviation of a width.</param>
/// <param name="Reproducibility">Standard deviation of a width between combinations of person, camera and sheet; null when there was one.</param>
/// <param name="EdgeU">What <c>digitise --gauge</c> takes as u of an edge.</param>
/// <param name="ScaleU">What it takes as relative u of the scale.</param>
/// <param name="Factors">Reproducibility of person, camera and sheet alone.</param>
/// <param name="Readings">Each photo's reading.</param>
/// <param name="Warnings">What a person should know.</param>
internal sealed record GaugeAnswer(
    string Schema, string Status, IReadOnlyList<GaugeAnswer.Refusal> Errors, string? File = null, string? Unit = null,
    GaugeAnswer.Figure? EdgeBias = null, GaugeAnswer.Figure? ScaleBias = null, double? Repeatability = null, double? Reproducibility = null,
    double? EdgeU = null, double? ScaleU = null, IReadOnlyList<GaugeAnswer.Factor>? Factors = null,
    IReadOnlyList<GaugeAnswer.Reading>? Readings = null, IReadOnlyList<string>? Warnings = null)
{
    private const string SchemaName = "sectionscan/gauge-result/1";

    public static GaugeAnswer Of(GaugeStudy study, string file, IReadOnlyList<string> warnings, bool isInch)
    {
        var unit = GaugeUnit.Of(isInch);
        var bias = study.Bias;
        return new(
            SchemaName, "ok", [], file, unit.Name,
            new(bias.EdgeMm * unit.PerMm, bias.EdgeStandardUncertaintyMm * unit.PerMm, unit.Name), new(bias.Scale, bias.ScaleStandardUncertainty, "1"),
            study.RepeatabilityMm * unit.PerMm, study.Combinations == 1 ? null : study.ReproducibilityMm * unit.PerMm,
            study.EdgeStandardUncertaintyMm * unit.PerMm, study.ScaleStandardUncertainty,
            [.. study.Factors.Select(f => new Factor(f.Factor, f.Levels, f.ReproducibilityMm * unit.PerMm))],
            [.. study.Readings.Select(r => new Reading(r.Photo, r.Plug, r.Person, r.Camera, r.Sheet, r.ExcessMm * unit.PerMm))],
            warnings);
    }

    public static GaugeAnswer Failed(IReadOnlyList<Problem> problems) =>
        new(SchemaName, "failed", [.. problems.Select(p => new Refusal(p.Code, p.What, p.Where, p.Remedy))]);

    /// <summary>What stood in the way.</summary>
    internal sealed record Refusal(string Code, string Message, string Where, string Remedy);

    /// <summary>A value with its standard uncertainty.</summary>
    internal sealed record Figure(double Value, [property: JsonPropertyName("u")] double StandardU, string Unit)
    {
        [JsonPropertyName("U")]
        public double ExpandedU => 2 * StandardU;
    }

    /// <summary>Reproducibility of one factor; null where it was not varied.</summary>
    internal sealed record Factor(string Name, IReadOnlyList<string> Levels, double? Reproducibility);

    /// <summary>One photo's reading: how much too wide.</summary>
    internal sealed record Reading(string Photo, string Plug, string Person, string Camera, string Sheet, double Excess);
}
