using System.Globalization;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Engines;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Schedules;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>What all that was found of an intake port's size comes to: one sentence on the port, and one on where the valve takes over.</summary>
internal static class PortSizeVerdict
{
    private const string Basis = "from the usual speeds and the inlet Mach index below; limits of speed: common practice, no source";

    /// <summary>Judges the least section by all engine speeds that are known.</summary>
    /// <param name="schedule">The port's areas.</param>
    /// <param name="engine">The engine.</param>
    /// <param name="wishes">The engine speeds with what is usual there, m/s; one or more.</param>
    /// <param name="valveLimitRpm">The engine speed from which the valve holds the breathing back, 1/min; null when it does not, or is not known.</param>
    public static Judgement Of(
        AreaSchedule schedule, EngineData engine, IReadOnlyList<(string Near, double Rpm, (double From, double To) UsualMPerS)> wishes, double? valveLimitRpm)
    {
        var least = schedule.Least;
        var (from, to) = (
            wishes.Max(wish => PortGasSpeed.AreaMm2For(engine, wish.Rpm, wish.UsualMPerS.To)),
            wishes.Min(wish => PortGasSpeed.AreaMm2For(engine, wish.Rpm, wish.UsualMPerS.From)));
        var at = string.Join(" and ", wishes.Select(wish => Text($"{wish.Near} ({wish.Rpm:0} 1/min)")));
        Wording Finding(Func<UnitWords, string> suits) => new(unit =>
            Text($"Taken together: the least section, station {least.Position.Station}, has {unit.RoundArea(least.AreaMm2.Value)}; {suits(unit)} {at}."));
        var range = Finding(unit => $"{unit.RoundArea(from)} to {unit.RoundArea(to)} would suit");
        var valve = valveLimitRpm is { } rpm ? Text($" From about {rpm:0} 1/min on the valve is the limit, and a larger port alone brings nothing there.") : string.Empty;
        if (from > to)
        {
            return new(
                "port-size-compromise", JudgementLevel.Look, Finding(_ => "no one size suits"),
                new(unit => $"The two lie so far apart that {unit.RoundArea(from)} would be wanted for the one and {unit.RoundArea(to)} for the other: decide which of them matters." + valve), Basis);
        }

        if (least.AreaMm2.Value > to)
        {
            return new(
                "port-size-large", LevelOf(least.AreaMm2, to), range,
                "The port is too large: torque low down is lost, and metal taken off does not come back. Take nothing more off there.", Basis);
        }

        if (least.AreaMm2.Value >= from)
        {
            return new("port-size-usual", JudgementLevel.Usual, range, "Leave the size of the port as it is." + valve, Basis);
        }

        var narrow = wishes.Where(wish => PortGasSpeed.AreaMm2For(engine, wish.Rpm, wish.UsualMPerS.To) > least.AreaMm2.Value).Min(wish => wish.Rpm);
        return new(
            "port-size-small", LevelOf(least.AreaMm2, from), range,
            valveLimitRpm < narrow
                ? Text($"The port is small, but the valve holds the breathing back from about {valveLimitRpm:0} 1/min already: look at the valve first.")
                : new Wording(unit => $"The port is too small: opening it there toward {unit.RoundArea(from)} lowers the losses." + valve),
            Basis);
    }

    private static JudgementLevel LevelOf(Estimate areaMm2, double limitMm2) =>
        Math.Abs(areaMm2.Value - limitMm2) > areaMm2.ExpandedUncertainty ? JudgementLevel.Outside : JudgementLevel.Look;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
