using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.GaugeStudies;

/// <summary>Why readings make no gauge study.</summary>
public static class GaugeProblems
{
    /// <summary>Not every plug was measured equally often, twice or more, by everyone.</summary>
    public static Problem NotCrossed(string where, IReadOnlyList<GaugeReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var operators = readings.Select(r => r.Operator).Distinct(StringComparer.Ordinal).ToArray();
        var cells = readings.Select(r => r.Part).Distinct(StringComparer.Ordinal)
            .SelectMany(part => operators.Select(o => (Part: part, Operator: o, Count: readings.Count(r => r.Part == part && r.Operator == o)))).ToArray();
        var (fewest, most) = (cells.MinBy(c => c.Count), cells.MaxBy(c => c.Count));
        var what = readings.Select(r => r.Part).Distinct(StringComparer.Ordinal).Count() < 2 ? "There is one plug only."
            : fewest.Count == most.Count ? $"Each plug was photographed {Times(fewest.Count)} by each person, camera and sheet."
            : $"Plug {fewest.Part} was photographed {Times(fewest.Count)} with {fewest.Operator}, but {most.Part} {Times(most.Count)} with {most.Operator}.";
        return new(
            "gauge-not-crossed", what, where,
            "Photograph two plugs or more, each equally often, twice or more, with every person, camera and sheet of the study; lift and lay the plug anew each time.");
    }

    /// <summary>The plugs' sizes do not differ enough.</summary>
    public static Problem PlugsTooAlike(string where, double leastMm, double mostMm, double neededRatio) => new(
        "gauge-plugs-alike",
        string.Create(
            CultureInfo.InvariantCulture,
            $"The plugs are {leastMm:0.#} to {mostMm:0.#} mm wide: too alike to tell an error of the edge from one of the scale."),
        where,
        string.Create(CultureInfo.InvariantCulture, $"Add a plug that is {neededRatio:0.#} times as wide as the smallest, or more."));

    private static string Times(int count) => count switch
    {
        0 => "never",
        1 => "once",
        2 => "twice",
        _ => string.Create(CultureInfo.InvariantCulture, $"{count} times"),
    };
}
