using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Schedules;

/// <summary>How a port's section runs along its centreline.</summary>
public sealed class AreaSchedule
{
    private readonly SmoothCurve radius;

    private AreaSchedule(string name, IReadOnlyList<ScheduleStation> stations, int? bowlFromStation)
    {
        (Name, Stations, BowlFromStation) = (name, stations, bowlFromStation);

        // The root of the area runs as a radius does: a cone comes out exact.
        radius = new SmoothCurve([.. stations.Select(s => s.Position.DistanceMm)], [.. stations.Select(s => Math.Sqrt(s.AreaMm2.Value))]);
    }

    /// <summary>The port's name.</summary>
    public string Name { get; }

    /// <summary>Two or more, distances growing.</summary>
    public IReadOnlyList<ScheduleStation> Stations { get; }

    /// <summary>The station where the bowl begins, or null.</summary>
    public int? BowlFromStation { get; }

    /// <summary>Distance of the first station, mm.</summary>
    public double FromMm => Stations[0].Position.DistanceMm;

    /// <summary>Distance of the last station, mm.</summary>
    public double ToMm => Stations[^1].Position.DistanceMm;

    /// <summary>From the first to the last station, mm.</summary>
    public double LengthMm => ToMm - FromMm;

    /// <summary>The station of least area, the choke point.</summary>
    public ScheduleStation Least => Stations.MinBy(station => station.AreaMm2.Value)!;

    /// <summary>Measures a port at all its stations.</summary>
    public static AreaSchedule Of(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Of(port.Name, [.. port.Stations.Select(Measured)], port.BowlFromStation);
    }

    /// <summary>A schedule from measured stations.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="stations">Two or more, distances growing, areas positive.</param>
    /// <param name="bowlFromStation">The station where the bowl begins, or null.</param>
    /// <exception cref="ArgumentException">Too few stations, or distances that do not grow.</exception>
    public static AreaSchedule Of(string name, IReadOnlyList<ScheduleStation> stations, int? bowlFromStation = null)
    {
        ArgumentNullException.ThrowIfNull(stations);
        return new(name, stations, bowlFromStation);
    }

    /// <summary>The area at a distance, mm²: through every station, smooth between them.</summary>
    /// <param name="distanceMm">Between <see cref="FromMm"/> and <see cref="ToMm"/>.</param>
    /// <remarks>The root of the area is interpolated (<see cref="SmoothCurve"/>). Between stations u grows by what the straight line between them would give instead, taken as the half-width of a
    /// rectangular distribution (an assumption).</remarks>
    public Estimate AreaMm2At(double distanceMm)
    {
        var smooth = Square(radius.At(distanceMm));
        var straight = Square(radius.StraightAt(distanceMm));
        var (i, share) = radius.Interval(distanceMm);
        var u = ((1 - share) * Stations[i].AreaMm2.StandardUncertainty) + (share * Stations[i + 1].AreaMm2.StandardUncertainty);
        return new(smooth, double.Hypot(u, (smooth - straight) / Math.Sqrt(3)));
    }

    /// <summary>The area at a share of the length, 0 at the first station and 1 at the last.</summary>
    public Estimate AreaMm2AtShare(double share) => AreaMm2At(FromMm + (share * LengthMm));

    private static ScheduleStation Measured(PortStation station)
    {
        var sources = station.ErrorSources;
        return new(station.Position, MeasuredOutline.Of(station.SquareOutline, sources, ScheduleStation.Measures), sources);
    }

    private static double Square(double value) => value * value;
}
