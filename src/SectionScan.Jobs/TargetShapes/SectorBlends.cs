using System.Globalization;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Porting.TargetShapes;

namespace SectionScan.Jobs.TargetShapes;

/// <summary>Tells where a sector that is to stay as it is loses metal all the same, because its share goes over into that of its neighbours.</summary>
public static class SectorBlends
{
    private const double SpacingMm = 0.25;

    /// <summary>Less than this nobody would miss, mm.</summary>
    private const double LeastMm = 0.02;

    /// <summary>One sentence for all sectors of 0 % that lose metal.</summary>
    /// <param name="own">The own wall, mm.</param>
    /// <param name="target">The target in the same frame.</param>
    /// <param name="shares">The shares.</param>
    /// <returns>The sentence, or null when there is none.</returns>
    public static string? InWords(Outline own, Outline target, SectorShares shares)
    {
        ArgumentNullException.ThrowIfNull(own);
        ArgumentNullException.ThrowIfNull(target);
        ArgumentNullException.ThrowIfNull(shares);
        if (shares.Values.All(share => share == 0) || shares.Values.All(share => share > 0))
        {
            return null;
        }

        var lost = OutlineComparison.Samples(target, own, SpacingMm).GroupBy(sample => sample.Region).OrderBy(group => group.Key)
            .Where(group => shares.Values[(int)group.Key] == 0)
            .Select(group => (group.Key, Mm: group.Max(sample => -sample.DeviationMm))).Where(each => each.Mm > LeastMm).ToList();
        return lost.Count == 0 ? null : string.Create(
            CultureInfo.InvariantCulture,
            $"Of a sector at 0 % only the middle stays as it is: from there its share goes over into that of its neighbours, and so metal still comes off: {string.Join(", ", lost.Select(each => string.Create(CultureInfo.InvariantCulture, $"up to {each.Mm:0.00} mm of the {RegionWords.Of(each.Key)}")))}. Give the neighbours 0 % too to keep all of it.");
    }
}
