using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Comparison;

/// <summary>How far several outlines of one station lie apart.</summary>
/// <param name="Middle">Which of them all were laid on: the one whose area is the middle one.</param>
/// <param name="Laid">Every outline as it was laid on the middle one, in the order given.</param>
/// <param name="Places">What was found at even steps round the middle one.</param>
public sealed record OutlineSpread(int Middle, IReadOnlyList<AlignedOutline> Laid, IReadOnlyList<SpreadPlace> Places)
{
    /// <summary>Where they lie farthest apart.</summary>
    public SpreadPlace Widest => Places.MaxBy(place => place.RangeMm)!;

    /// <summary>The mean distance between outermost and innermost wall, mm.</summary>
    public double MeanRangeMm => Places.Average(place => place.RangeMm);

    /// <summary>Finds the spread.</summary>
    /// <param name="sections">Two or more sections of one station.</param>
    /// <param name="choice">How they are laid on each other.</param>
    /// <param name="spacingMm">The spacing of the places, mm.</param>
    public static Result<OutlineSpread> Of(
        IReadOnlyList<(Outline Outline, SectionMarks Marks)> sections, AlignmentChoice choice, double spacingMm = 0.25)
    {
        ArgumentNullException.ThrowIfNull(sections);
        ArgumentOutOfRangeException.ThrowIfLessThan(sections.Count, 2);
        var byArea = Enumerable.Range(0, sections.Count).OrderBy(i => PolygonMoments.SignedAreaMm2(sections[i].Outline.Points)).ToList();
        var middle = byArea[sections.Count / 2];
        var laid = new List<AlignedOutline>();
        for (var i = 0; i < sections.Count; i++)
        {
            // The middle one lies on itself, whatever the choice says of the others.
            var how = i == middle ? AlignmentChoice.AsPlaced : choice;
            if (!SectionAlignment.Align(sections[middle], sections[i], how).TryGet(out var one, out var problem))
            {
                return problem;
            }

            laid.Add(one);
        }

        var deviations = laid.ConvertAll(one => OutlineComparison.Samples(sections[middle].Outline, one.Outline, spacingMm));
        return new OutlineSpread(middle, laid, [.. deviations[middle].Select((sample, i) =>
            new SpreadPlace(sample.Reference, sample.Direction, sample.Region, [.. deviations.Select(one => one[i].DeviationMm)]))]);
    }
}
