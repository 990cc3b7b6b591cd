using System.Globalization;
using SectionScan.Archive.Entries;
using SectionScan.Archive.Search;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Library;

/// <summary>From a range of numbers to a condition.</summary>
internal static class RangeConditions
{
    private static readonly Dictionary<string, (string Column, string Unit)> Own = new(StringComparer.OrdinalIgnoreCase)
    {
        ["area"] = ("s.area_mm2", "mm²"),
        ["width"] = ("s.width_mm", "mm"),
        ["height"] = ("s.height_mm", "mm"),
        ["station"] = ("c.station", ""),
    };

    public static Problem? Add(QueryConditions conditions, NumberRange range)
    {
        var name = EntryRules.Name(range.Name);
        if (range is { Minimum: null, Maximum: null })
        {
            return SearchProblems.RangeUnusable(name, "The range has neither end.");
        }

        var (least, greatest) = (range.Minimum ?? double.NegativeInfinity, range.Maximum ?? double.PositiveInfinity);
        if (!(least <= greatest))
        {
            return SearchProblems.RangeUnusable(name, string.Create(CultureInfo.InvariantCulture, $"No number lies between {least} and {greatest}."));
        }

        var unit = range.Unit is null ? null : EntryRules.Name(range.Unit);
        var (from, kind) = UnitScale.ToBase(least, unit ?? "");
        var (to, _) = UnitScale.ToBase(greatest, unit ?? "");
        if (Own.TryGetValue(name, out var own))
        {
            if (unit is not null && kind != own.Unit)
            {
                return SearchProblems.UnitUnusable(name, unit);
            }

            conditions.Add($"{own.Column} BETWEEN {{0}} AND {{1}}", from, to);
        }
        else if (unit is null)
        {
            // IN and not EXISTS: the index is searched once and not once for each entry.
            const string Bare = "r.id IN (SELECT f.revision_id FROM revision_field f WHERE f.name = {0} AND f.value BETWEEN {1} AND {2})";
            conditions.Add(Bare, name, from, to);
        }
        else
        {
            const string InKind =
                "r.id IN (SELECT f.revision_id FROM revision_field f WHERE f.name = {0} AND f.base_unit = {1} AND f.base_value BETWEEN {2} AND {3})";
            conditions.Add(InKind, name, kind, from, to);
        }

        return null;
    }
}
