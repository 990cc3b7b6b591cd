using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Walls;

/// <summary>All that is known of what lies behind the walls of one port.</summary>
/// <param name="KeepOuts">The keep-outs, each with its station; null is every station.</param>
/// <param name="Readings">The wall readings, each with its station; null is every station.</param>
public sealed record PortWalls(
    IReadOnlyList<(int? Station, KeepOut KeepOut)> KeepOuts, IReadOnlyList<(int? Station, WallReading Reading)> Readings)
{
    /// <summary>Nothing is known.</summary>
    public static PortWalls None { get; } = new([], []);

    /// <summary>The keep-outs of one station, among them the far sides of the walls that were read there.</summary>
    /// <param name="station">The station; null takes only what is given for every station.</param>
    /// <param name="present">The outline of the port as it was when the walls were read.</param>
    /// <returns>The keep-outs in the order given, readings last; or <c>reading-off-the-outline</c>.</returns>
    public Result<IReadOnlyList<KeepOut>> At(int? station, Outline present)
    {
        var found = KeepOuts.Where(each => IsAt(each.Station)).Select(each => each.KeepOut).ToList();
        foreach (var (_, reading) in Readings.Where(each => IsAt(each.Station)))
        {
            if (!reading.FarSide(present).TryGet(out var farSide, out var problem))
            {
                return problem;
            }

            found.Add(farSide);
        }

        return found;

        bool IsAt(int? given) => given is null || given == station;
    }
}
