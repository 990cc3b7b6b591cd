using MathNet.Numerics.Integration;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Porting.Cutting;

/// <summary>Metal along the port from the metal of its stations.</summary>
public static class CutVolume
{
    private const int PointsOfAnInterval = 16;

    /// <summary>The volume between stations at even steps, mm³: from station to station the mean of both areas.</summary>
    /// <param name="areasMm2">The metal of each station in order, mm².</param>
    /// <param name="stepMm">The distance from station to station, mm.</param>
    /// <returns>The volume between the first station and the last; zero for one station.</returns>
    /// <remarks>The trapezoidal rule; what lies before the first station and after the last is not counted.</remarks>
    public static double Between(IReadOnlyList<double> areasMm2, double stepMm)
    {
        ArgumentNullException.ThrowIfNull(areasMm2);
        return Enumerable.Range(1, Math.Max(0, areasMm2.Count - 1)).Sum(i => (areasMm2[i - 1] + areasMm2[i]) / 2 * stepMm);
    }

    /// <summary>The volume between stations whose places along the centreline are known, mm³: the integral of the metal's area square to the
    /// centreline, by a smooth curve through the stations (<see cref="SmoothCurve"/>).</summary>
    /// <param name="areasMm2">The metal of each station in order, in the plane of its section, mm².</param>
    /// <param name="positions">Their places, distances growing; a section that leans counts by the cosine of its tilt.</param>
    /// <returns>The volume between the first station and the last; zero for one station.</returns>
    public static double Along(IReadOnlyList<double> areasMm2, IReadOnlyList<StationPosition> positions)
    {
        ArgumentNullException.ThrowIfNull(areasMm2);
        ArgumentNullException.ThrowIfNull(positions);
        if (areasMm2.Count != positions.Count)
        {
            throw new ArgumentException($"{areasMm2.Count} areas do not belong to {positions.Count} places.", nameof(positions));
        }

        if (positions.Count < 2)
        {
            return 0;
        }

        double[] places = [.. positions.Select(position => position.DistanceMm)];
        var curve = new SmoothCurve(places, [.. areasMm2.Zip(positions, (area, position) => area * Math.Cos(position.Tilt.Radians))]);

        // Gauss and Legendre's rule with a few points is exact for the cubic between two stations; more are taken for where it would dip under none.
        return places.Zip(places.Skip(1), (from, to) => GaussLegendreRule.Integrate(place => Math.Max(0, curve.At(place)), from, to, PointsOfAnInterval)).Sum();
    }
}
