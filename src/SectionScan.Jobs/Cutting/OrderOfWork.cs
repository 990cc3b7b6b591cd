using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Comparison;
using SectionScan.Porting.Cutting;

namespace SectionScan.Jobs.Cutting;

/// <summary>The order of work in plain words. Common practice, no source.</summary>
public static class OrderOfWork
{
    /// <summary>The whole job, step by step.</summary>
    public static IReadOnlyList<string> Of(IReadOnlyList<StationPlan> stations, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(stations);
        var steps = new List<string>
        {
            "Measure the walls at the thin spots of this casting and read the cautions below. Print and cut out the templates, check their bars with a caliper.",
            "Coat the faces with layout dye and scribe the target there through the outside template, its centre lines on the port's.",
        };
        var byNeed = stations.OrderByDescending(station => station.Cut.NowMm2).ToList();
        if (byNeed.Any(station => station.Cut.NowMm2 > 0))
        {
            steps.Add("Rough from the face inward, and where most metal stands first: "
                + string.Join(", ", byNeed.Where(station => station.Cut.NowMm2 > 0).Select(station => $"{station.Title} ({MeasureText.Area(new(station.Cut.NowMm2, 0), unit)})")) + ".");
        }

        steps.AddRange(stations.Select(station => $"{Capital(station.Title)}. {AtStation(station.Cut, unit)}"));
        steps.Add("Check each station with its rough template after every few strokes, light behind it. Stop when the gap is even: the finishing allowance is still there.");
        steps.Add("Blend from station to station without steps, then finish to the finish templates; the last hundredths with abrasive, not with the burr.");
        steps.Add("Make a new mould, measure it and compare it with the target. Wash out, look for cracks, pressure-test.");
        return steps;
    }

    /// <summary>What to do at one station.</summary>
    public static string AtStation(StationCut cut, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(cut);
        var words = new List<string>();
        var rough = cut.Sectors.Where(sector => sector.MostNowMm > 0).OrderByDescending(sector => sector.MostNowMm).ToList();
        words.Add(rough.Count == 0
            ? NothingToRough(cut, Length(cut.AllowanceMm))
            : "rough " + string.Join(", ", rough.Select(sector => $"the {RegionWords.Of(sector.Region)} by up to {Length(sector.MostNowMm)}")) + ".");
        var finish = cut.Sectors.Where(sector => !rough.Contains(sector) && HasMark(cut, sector.Region, CutMark.FinishOnly)).ToList();
        if (finish.Count > 0)
        {
            words.Add("Finish only: " + string.Join(", ", finish.Select(sector => $"the {RegionWords.Of(sector.Region)} (up to {Length(sector.MostAtFinishMm)})")) + ".");
        }

        if (cut.DepthExpandedUncertaintyMm > cut.AllowanceMm)
        {
            words.Add($"Mind: a depth here is good to ±{Length(cut.DepthExpandedUncertaintyMm)} only, more than is left for finishing; measure this station better first.");
        }

        AddWhere(CutMark.Leave, $"Nothing comes off where the wall is on the target within ±{Length(cut.LeastDepthMm)}");
        AddWhere(CutMark.Beyond, "Nothing comes off where the wall is beyond the target already");
        AddWhere(CutMark.ThinWall, "Nothing comes off before the wall is measured, for it may come under its limit");
        return Capital(string.Join(' ', words));

        void AddWhere(CutMark mark, string what)
        {
            var sides = cut.Places.GroupBy(place => place.Region).OrderBy(group => group.Key)
                .Select(group => (group.Key, Share: (double)group.Count(place => place.Mark == mark) / group.Count())).Where(side => side.Share > 0.05).ToList();
            if (sides.Count > 0)
            {
                var where = sides.Count == Enum.GetValues<OutlineRegion>().Length && sides.All(side => side.Share > 0.95)
                    ? "all round"
                    : string.Join(", ", sides.Select(side => side.Share > 0.95 ? $"the whole {RegionWords.Of(side.Key)}" : $"part of the {RegionWords.Of(side.Key)}"));
                words.Add($"{what}: {where}.");
            }
        }

        string Length(double lengthMm) => MeasureText.Length(new(lengthMm, 0), unit);
    }

    private static string NothingToRough(StationCut cut, string allowance) =>
        cut.Places.Any(place => place.Mark == CutMark.ThinWall && place.AtFinishMm > cut.AllowanceMm) ? "nothing to rough before the walls are measured."
        : cut.Places.Any(place => place.Mark == CutMark.FinishOnly) ? $"nothing to rough: hardly more than the {allowance} left for finishing stands anywhere."
        : "nothing to rough.";

    private static bool HasMark(StationCut cut, OutlineRegion region, CutMark mark) =>
        cut.Places.Any(place => place.Region == region && place.Mark == mark);

    private static string Capital(string words) => words.Length == 0 ? words : char.ToUpper(words[0], CultureInfo.InvariantCulture) + words[1..];
}
