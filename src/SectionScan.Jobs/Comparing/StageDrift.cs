using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>How one station changed over the stages of the job: as cast, roughed, finished.</summary>
/// <param name="Station">The station; null for single sections without a number.</param>
/// <param name="First">The first stage's name and section, which all later ones are laid on.</param>
/// <param name="Stages">The later stages in order: each against the first, and against the one before.</param>
public sealed record StageDrift(
    int? Station, (string Stage, SectionInput Section) First, IReadOnlyList<(string Stage, SectionComparison FromFirst, SectionComparison FromLast)> Stages)
{
    /// <summary>Follows every station that all stages have.</summary>
    /// <param name="stages">The stages in order, two or more, with their sections.</param>
    /// <param name="choice">How sections are laid on each other.</param>
    public static Result<IReadOnlyList<StageDrift>> OfStages(
        IReadOnlyList<(string Stage, IReadOnlyList<SectionInput> Sections)> stages, AlignmentChoice choice)
    {
        ArgumentNullException.ThrowIfNull(stages);
        var drifts = new List<StageDrift>();
        var later = new List<IReadOnlyList<(SectionInput First, SectionInput Second)>>();
        foreach (var (_, sections) in stages.Skip(1))
        {
            if (!SectionFiles.Paired(stages[0].Sections, sections).TryGet(out var paired, out var problem))
            {
                return problem;
            }

            later.Add(paired.Pairs);
        }

        foreach (var (first, _) in later[0].Where(pair => later.All(pairs => pairs.Any(other => ReferenceEquals(other.First, pair.First)))))
        {
            var steps = new List<(string, SectionComparison, SectionComparison)>();
            var last = first;
            for (var i = 0; i < later.Count; i++)
            {
                var section = later[i].First(pair => ReferenceEquals(pair.First, first)).Second;
                if (!SectionComparison.With(first, section, choice).TryGet(out var fromFirst, out var problem))
                {
                    return problem;
                }

                // For the first step both are the same.
                var fromLast = fromFirst;
                if (i > 0 && !SectionComparison.With(last, section, choice).TryGet(out fromLast, out problem))
                {
                    return problem;
                }

                steps.Add((stages[i + 1].Stage, fromFirst, fromLast));
                last = section;
            }

            drifts.Add(new(first.Station, (stages[0].Stage, first), steps));
        }

        return drifts.Count > 0 ? drifts : ComparingProblems.NoStationInBoth();
    }
}
