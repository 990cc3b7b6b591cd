using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Lofts;

/// <summary>Why no solid can be made of a port.</summary>
public static class LoftProblems
{
    /// <summary>One section has no length.</summary>
    public static Problem TooFewStations(string where, int found) => new(
        "loft-too-few-stations",
        string.Create(CultureInfo.InvariantCulture, $"A solid needs two stations or more; there is {found}."),
        where,
        "Digitise more slices of the port and give their distances.");

    /// <summary>Distances do not grow.</summary>
    public static Problem OutOfOrder(string where, LoftStation before, LoftStation after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return new(
            "loft-out-of-order",
            string.Create(CultureInfo.InvariantCulture, $"Station {after.Station} at {after.DistanceMm:0.##} mm does not lie beyond station {before.Station} at {before.DistanceMm:0.##} mm."),
            where,
            "Give distances along the centreline that grow with the flow.");
    }

    /// <summary>The centreline turns so tightly that sections would pass through each other.</summary>
    public static Problem CrossesItself(string where, int before, int after, double radiusMm, double reachMm) => new(
        "loft-crosses-itself",
        string.Create(CultureInfo.InvariantCulture, $"Between stations {before} and {after} the centreline turns on a radius of {radiusMm:0.0} mm, but the section reaches {reachMm:0.0} mm toward the inside of the turn: the sections would pass through each other."),
        where,
        "Check the turns and distances of these stations; distances count along the middles of the sections, not along the floor.");
}
