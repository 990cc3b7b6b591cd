using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Ports;

/// <summary>The stations of one port in the order of the flow, each once, distances growing. Immutable.</summary>
public sealed class StationTable
{
    /// <summary>The farthest distance that is taken for millimetres along a port.</summary>
    public const double MostDistanceMm = 2000;

    private StationTable(IReadOnlyList<StationPosition> positions) => Positions = positions;

    /// <summary>Two stations or more.</summary>
    public IReadOnlyList<StationPosition> Positions { get; }

    /// <summary>Checks and adopts the rows of a table. Rows may stand in any order of lines, but distance must grow with the station's number.</summary>
    /// <param name="rows">The rows.</param>
    /// <param name="where">The table's file, or the port it belongs to, for messages.</param>
    /// <returns>The table, or one of <see cref="StationProblems"/>.</returns>
    public static Result<StationTable> From(IEnumerable<StationPosition> rows, string where)
    {
        ArgumentNullException.ThrowIfNull(rows);
        var sorted = rows.OrderBy(row => row.Station).ToList();
        if (sorted.Count < 2)
        {
            return sorted.Count == 0 ? StationProblems.TableEmpty(where) : StationProblems.OneStationOnly(where, sorted[0].Station);
        }

        for (var i = 0; i < sorted.Count; i++)
        {
            var row = sorted[i];
            if (row.Station < 0 || !(Math.Abs(row.DistanceMm) <= MostDistanceMm))
            {
                return StationProblems.DistanceOutOfRange(where, row.Station, row.DistanceMm, MostDistanceMm);
            }

            if (!(Math.Abs(row.Tilt.Degrees) <= StationPosition.MostTiltDeg))
            {
                return StationProblems.TiltOutOfRange(where, row.Station, row.Tilt.Degrees);
            }

            if (!(row.DistanceStandardUncertaintyMm is >= 0 and < 100))
            {
                return StationProblems.UncertaintyOutOfRange(where, row.Station, row.DistanceStandardUncertaintyMm);
            }

            if (i > 0 && sorted[i - 1].Station == row.Station)
            {
                return StationProblems.TwiceInTable(where, row.Station);
            }

            if (i > 0 && row.DistanceMm <= sorted[i - 1].DistanceMm)
            {
                return StationProblems.OutOfOrder(where, sorted[i - 1], row);
            }
        }

        return new StationTable(sorted);
    }
}
