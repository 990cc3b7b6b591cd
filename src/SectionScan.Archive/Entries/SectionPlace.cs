using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Entries;

/// <summary>Where a section belongs: head, port, station and, when the same station is kept at several stages of the work, the stage.
/// No two entries that are not removed share a place.</summary>
/// <param name="Head">The head's name; no slash.</param>
/// <param name="Port">The port.</param>
/// <param name="Station">The station's number, with the flow, zero or more.</param>
/// <param name="Stage">The stage of the work, such as "as cast" or "finished"; may be empty.</param>
public sealed record SectionPlace(string Head, PortName Port, int Station, string Stage = "")
{
    /// <summary>The place as a path: "Bramble 480 twin/intake 1/station 3" or "…/station 3/as cast".</summary>
    public string Path => string.Create(
        CultureInfo.InvariantCulture, $"{Head}/{Port}/station {Station}{(Stage.Length == 0 ? "" : "/")}{Stage}");

    /// <summary>Reads a <see cref="Path"/>.</summary>
    /// <returns>The place, or <c>section-path-unusable</c>.</returns>
    public static Result<SectionPlace> Parse(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        const string Station = "station ";
        var parts = path.Split('/', StringSplitOptions.TrimEntries);
        if (parts.Length is < 3 or > 4
            || parts[0].Length == 0
            || !PortName.Parse(parts[1]).TryGet(out var port, out _)
            || !parts[2].StartsWith(Station, StringComparison.OrdinalIgnoreCase)
            || !int.TryParse(parts[2].AsSpan(Station.Length), NumberStyles.None, CultureInfo.InvariantCulture, out var station))
        {
            return EntryProblems.PathUnusable(path);
        }

        return new SectionPlace(parts[0], port, station, parts.Length == 4 ? parts[3] : "");
    }

    /// <summary>The path.</summary>
    public override string ToString() => Path;
}
