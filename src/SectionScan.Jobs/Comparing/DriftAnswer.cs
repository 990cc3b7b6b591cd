namespace SectionScan.Jobs.Comparing;

/// <summary>How stations changed over the stages of a job, as one document for programs.</summary>
/// <param name="Schema">The schema's name.</param>
/// <param name="Align">How sections were laid on each other, in the command line's word.</param>
/// <param name="Stations">The stations in order.</param>
public sealed record DriftAnswer(string Schema, string Align, IReadOnlyList<DriftAnswer.StationPart> Stations)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/drift/1";

    /// <summary>Makes the answer.</summary>
    public static DriftAnswer Of(IReadOnlyList<StageDrift> drifts, string align) => new(SchemaName, align, [.. drifts.Select(drift => new StationPart(
        drift.Station,
        drift.First.Stage,
        [.. drift.Stages.Select(stage => new StagePart(
            stage.Stage, ComparisonAnswer.Of(stage.FromFirst, align) with { Samples = [] }, ComparisonAnswer.Of(stage.FromLast, align) with { Samples = [] }))]))]);

    /// <summary>One station: the first stage's name, and every later one.</summary>
    public sealed record StationPart(int? Station, string First, IReadOnlyList<StagePart> Stages);

    /// <summary>A stage against the first one, and against the one before; without the deviations one by one.</summary>
    public sealed record StagePart(string Stage, ComparisonAnswer FromFirst, ComparisonAnswer FromLast);
}
