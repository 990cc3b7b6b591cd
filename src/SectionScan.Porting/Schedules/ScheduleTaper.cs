using System.Globalization;
using SectionScan.Porting.Judgements;

namespace SectionScan.Porting.Schedules;

/// <summary>The taper of a port: how its area changes along the way, and where it changes suddenly.</summary>
public static class ScheduleTaper
{
    /// <summary>A change of area beyond this, in percent for 10 mm of the runner, is sudden (common practice, no source).</summary>
    public const double SuddenPercentPer10Mm = 5;

    /// <summary>A runner that widens by a larger cone than this lets the flow come off the wall (common practice, no source).</summary>
    public const double MostConeDeg = 8;

    private const string Practice = "common practice, no source";

    private const string Diffusing =
        "diffusing part of a runner at 4 to 8° of whole cone angle: common practice, no source; compare Ishikawa and Nakamura 1990, JSME Int. J. II 33:97 (abstract)";

    /// <summary>Every pair of neighbouring stations.</summary>
    public static IReadOnlyList<TaperInterval> Intervals(AreaSchedule schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        return [.. schedule.Stations.Zip(schedule.Stations.Skip(1), (from, to) => new TaperInterval(from, to))];
    }

    /// <summary>What is sudden, in plain words. From the station where the bowl begins nothing is flagged: there the area is meant to change.</summary>
    public static IReadOnlyList<Judgement> Judge(AreaSchedule schedule)
    {
        ArgumentNullException.ThrowIfNull(schedule);
        var judgements = new List<Judgement>();
        foreach (var interval in Intervals(schedule))
        {
            if (interval.To.Position.Station >= schedule.BowlFromStation)
            {
                break;
            }

            if (Sudden(interval) is { } sudden)
            {
                judgements.Add(sudden);
            }
            else if (interval.ConeAngle.Degrees > MostConeDeg)
            {
                judgements.Add(new(
                    "runner-widens-fast", JudgementLevel.Outside,
                    Text($"Between stations {interval.From.Position.Station} and {interval.To.Position.Station} the runner widens by a cone of {interval.ConeAngle.Degrees:0.0}°."),
                    Text($"Beyond about {MostConeDeg:0}° the flow comes off the wall; the area gained is not used."), Diffusing));
            }
        }

        return judgements;
    }

    private static Judgement? Sudden(TaperInterval interval)
    {
        var percent = interval.PercentPer10Mm;
        if (Math.Abs(percent.Value) <= SuddenPercentPer10Mm)
        {
            return null;
        }

        var isSure = Math.Abs(percent.Value) - percent.ExpandedUncertainty > SuddenPercentPer10Mm;
        var widens = percent.Value > 0;
        return new(
            widens ? "area-widens-suddenly" : "area-narrows-suddenly", isSure ? JudgementLevel.Outside : JudgementLevel.Look,
            new(unit => Text($"Between stations {interval.From.Position.Station} and {interval.To.Position.Station} the area {(widens ? "grows" : "shrinks")} by {Math.Abs(percent.Value) * unit.StretchMm / 10:0.0} ± {percent.ExpandedUncertainty * unit.StretchMm / 10:0.0} % for {unit.Stretch} (limit {SuddenPercentPer10Mm * unit.StretchMm / 10:0.#} %).")),
            isSure
                ? widens
                    ? "The gas slows down and may come off the wall; speed once lost is not won back."
                    : "The gas is hurried through a narrow place; blend it over a longer way unless it is a wanted throat."
                : "Whether it is beyond the limit cannot be told with this uncertainty; add a station between the two.",
            Practice);
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
