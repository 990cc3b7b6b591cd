using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Digitising;

/// <summary>Which station tag belongs to which slice: the nearest pairs first.</summary>
internal static class TagMatch
{
    // A tag lies beside its slice, not farther off than this from the slice's edge.
    private const double FarthestMm = 22;

    /// <summary>Matches tags to outlines.</summary>
    /// <returns>The tag of each outline, or null.</returns>
    public static StationTag?[] Match(IReadOnlyList<TargetPoint[]> outlines, IReadOnlyList<StationTag> tags)
    {
        var pairs = new List<(double DistanceMm, int Outline, StationTag Tag)>();
        for (var i = 0; i < outlines.Count; i++)
        {
            foreach (var tag in tags)
            {
                var distance = outlines[i].Min(p => p.DistanceTo(tag.Centre));
                if (distance < FarthestMm)
                {
                    pairs.Add((distance, i, tag));
                }
            }
        }

        var matched = new StationTag?[outlines.Count];
        foreach (var (_, outline, tag) in pairs.OrderBy(p => p.DistanceMm).ThenBy(p => p.Outline))
        {
            if (matched[outline] is null && !matched.Contains(tag))
            {
                matched[outline] = tag;
            }
        }

        return matched;
    }
}
