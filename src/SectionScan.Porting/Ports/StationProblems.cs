using System.Globalization;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Ports;

/// <summary>What can be wrong with the stations of a port.</summary>
public static class StationProblems
{
    /// <summary>The table has no rows.</summary>
    public static Problem TableEmpty(string where) => new(
        "station-table-empty", "The table of stations has no rows.", where,
        "Write one line for each station under the head line: station,distance_mm");

    /// <summary>The table has one row.</summary>
    public static Problem OneStationOnly(string where, int station) => new(
        "one-station-only", Text($"Only station {station} is there; a port needs two or more sections."), where,
        "Slice the mould at more stations; a single section can be measured and compared without a port.");

    /// <summary>A station stands twice in the table.</summary>
    public static Problem TwiceInTable(string where, int station) => new(
        "station-twice-in-table", Text($"Station {station} stands twice in the table of stations."), where,
        "Leave one line for each station.");

    /// <summary>Distance does not grow with the station.</summary>
    public static Problem OutOfOrder(string where, StationPosition before, StationPosition after)
    {
        ArgumentNullException.ThrowIfNull(before);
        ArgumentNullException.ThrowIfNull(after);
        return new(
            "stations-out-of-order",
            Text($"Station {after.Station} lies at {after.DistanceMm:0.##} mm, not beyond station {before.Station} at {before.DistanceMm:0.##} mm."),
            where, "Number the stations with the flow and give distances along the centreline that grow with the number.");
    }

    /// <summary>A distance that cannot be one.</summary>
    public static Problem DistanceOutOfRange(string where, int station, double distanceMm, double most) => new(
        "station-distance-out-of-range", Text($"Station {station} at {distanceMm:0.##} mm cannot be a place along a port."), where,
        Text($"Give the distance along the centreline in millimetres, at most {most:0}, and station numbers from 0."));

    /// <summary>A cut plane that leans too far.</summary>
    public static Problem TiltOutOfRange(string where, int station, double tiltDeg) => new(
        "station-tilt-out-of-range", Text($"The cut plane of station {station} leans {tiltDeg:0.#}°; more than {StationPosition.MostTiltDeg:0}° cannot be brought back to square."), where,
        "Give the lean from square to the centreline, not the turn of the port; slice again nearer to square if it is true.");

    /// <summary>A standard uncertainty that cannot be one.</summary>
    public static Problem UncertaintyOutOfRange(string where, int station, double valueMm) => new(
        "station-uncertainty-out-of-range", Text($"The uncertainty of station {station}'s distance is given as {valueMm} mm."), where,
        "Give the standard uncertainty in millimetres, such as 0.3, or leave it out.");

    /// <summary>The head line names something that is no column.</summary>
    public static Problem ColumnUnknown(string where, string column, IReadOnlyList<string> known) => new(
        "station-column-unknown", $"The head line names \"{column}\", which is no column of a station table.", where,
        $"Use of these: {string.Join(", ", known)}.");

    /// <summary>A column that must be there is not, or stands twice.</summary>
    public static Problem ColumnMissing(string where) => new(
        "station-column-missing", "The head line must name station once, and one of distance_mm and distance_in once.", where,
        "Begin the table with the line: station,distance_mm,tilt_deg");

    /// <summary>A line cannot be read.</summary>
    public static Problem LineUnusable(string where, int line, string reason) => new(
        "station-line-unusable", Text($"Line {line} cannot be used: {reason}."), where, "Correct the line; the table is written as station,distance_mm,tilt_deg.");

    /// <summary>A section carries no station.</summary>
    public static Problem SectionWithoutStation(string where, int count) => new(
        "section-without-station", count == 1
            ? "One of the sections carries no station number, so that its place along the port is unknown."
            : Text($"{count} of the sections carry no station number, so that their places along the port are unknown."), where,
        "Lay a station tag beside each slice and photograph again.");

    /// <summary>Two sections carry the same station.</summary>
    public static Problem SectionTwice(string where, int station) => new(
        "section-twice", Text($"Two sections carry station {station}."), where,
        "Leave one of the two photos out, or give the slices the right tags.");

    /// <summary>Stations of the table have no section.</summary>
    public static Problem SectionMissing(string where, IReadOnlyList<int> stations) => new(
        "station-without-section", $"The table names {Stations(stations)}, but no section carries that number.", where,
        "Add the photo with that slice, check its tag, or take the line out of the table.");

    /// <summary>Sections have stations that the table does not name.</summary>
    public static Problem NotInTable(string where, IReadOnlyList<int> stations) => new(
        "station-not-in-table", $"The sections hold {Stations(stations)}, which the table of stations does not name.", where,
        "Add a line with its distance, or leave the section out.");

    /// <summary>Slices of a mould and openings in metal in one port.</summary>
    public static Problem Mixed(string where, IReadOnlyList<(SectionSubject Subject, IReadOnlyList<int> Stations)> kinds) => new(
        kinds.Any(kind => kind.Subject == SectionSubject.Target) ? "targets-and-sections-mixed" : "moulds-and-openings-mixed",
        $"In one port stand {string.Join(" and ", kinds.Select(kind => $"{Words(kind.Subject)} ({Stations(kind.Stations)})"))}.", where,
        kinds.Any(kind => kind.Subject == SectionSubject.Target)
            ? "Make two ports of them and compare these: a target is what the port is to become, not what it is."
            : "Make two ports of them and compare these: rubber shrinks and is cut elsewhere than metal.");

    private static string Words(SectionSubject subject) => subject switch
    {
        SectionSubject.Mould => "slices of a mould",
        SectionSubject.Opening => "openings in metal",
        _ => "target shapes",
    };

    private static string Stations(IReadOnlyList<int> stations) =>
        $"station{(stations.Count == 1 ? "" : "s")} {string.Join(", ", stations.Select(each => Text($"{each}")))}";

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
