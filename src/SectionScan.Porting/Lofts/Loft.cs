using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Solids;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Porting.Lofts;

/// <summary>The solid between a port's sections along its centreline: what a mould of the port fills.</summary>
/// <remarks>The centreline lies in one upright plane and turns toward the floor as the stations tell; its direction runs smoothly between
/// them. Places of the same direction from the centroid run smoothly from section to section (<see cref="SmoothCurve"/>), straight
/// between two stations, so that a cylinder, a cone and a ring come out as such. Stations are met exactly. Space: x with the flow at the
/// first station, y to the left, z toward the roof, the first section's centroid at the origin.</remarks>
public sealed class Loft
{
    /// <summary>Places round a ring.</summary>
    public const int PlacesOfRing = 360;

    /// <summary>The widest spacing of rings, mm.</summary>
    public const double RingSpacingMm = 1;

    private readonly SmoothCurve turns;
    private readonly SmoothCurve[] xs;
    private readonly SmoothCurve[] ys;

    private Loft(IReadOnlyList<LoftStation> stations)
    {
        Stations = stations;
        double[] at = [.. stations.Select(station => station.DistanceMm)];
        turns = new(at, [.. stations.Select(station => station.Turn.Radians)]);
        var rays = SectionRays.Of([.. stations.Select(station => station.Outline)], PlacesOfRing);
        xs = [.. Enumerable.Range(0, PlacesOfRing).Select(k => new SmoothCurve(at, [.. rays.Select(ray => ray[k].XMm)]))];
        ys = [.. Enumerable.Range(0, PlacesOfRing).Select(k => new SmoothCurve(at, [.. rays.Select(ray => ray[k].YMm)]))];
        Rings = MakeRings(at);
    }

    /// <summary>The stations, two or more.</summary>
    public IReadOnlyList<LoftStation> Stations { get; }

    /// <summary>The rings from the first station to the last, every station among them.</summary>
    public IReadOnlyList<LoftRing> Rings { get; }

    /// <summary>Makes the solid of a port.</summary>
    /// <returns>The solid, or one of <see cref="LoftProblems"/>.</returns>
    public static Result<Loft> Of(Port port)
    {
        ArgumentNullException.ThrowIfNull(port);
        return Of(port.Name, [.. port.Stations.Select(s => new LoftStation(s.Position.Station, s.SquareOutline, s.Position.DistanceMm, s.Position.Turn))]);
    }

    /// <summary>Makes the solid of sections square to the centreline.</summary>
    /// <param name="where">What it belongs to, for messages.</param>
    /// <param name="stations">Two or more in the order of the flow.</param>
    public static Result<Loft> Of(string where, IReadOnlyList<LoftStation> stations)
    {
        ArgumentNullException.ThrowIfNull(stations);
        if (stations.Count < 2)
        {
            return LoftProblems.TooFewStations(where, stations.Count);
        }

        for (var i = 1; i < stations.Count; i++)
        {
            if (!(stations[i].DistanceMm > stations[i - 1].DistanceMm))
            {
                return LoftProblems.OutOfOrder(where, stations[i - 1], stations[i]);
            }
        }

        var loft = new Loft(stations);
        return loft.Crossing(where) is { } problem ? problem : loft;
    }

    /// <summary>The closed surface.</summary>
    public TriangleMesh ToMesh()
    {
        var vertices = new List<SpacePoint>();
        foreach (var ring in Rings)
        {
            vertices.AddRange(ring.Places);
        }

        var triangles = new List<(int, int, int)>();
        for (var r = 0; r + 1 < Rings.Count; r++)
        {
            for (var k = 0; k < PlacesOfRing; k++)
            {
                var next = (k + 1) % PlacesOfRing;
                var (a, b, c, d) = (Index(r, k), Index(r, next), Index(r + 1, next), Index(r + 1, k));

                // The two ways to split a side take turns, so that their errors on a saddle cancel.
                if ((r + k) % 2 == 0)
                {
                    triangles.Add((a, c, b));
                    triangles.Add((a, d, c));
                }
                else
                {
                    triangles.Add((a, d, b));
                    triangles.Add((b, d, c));
                }
            }
        }

        LoftCaps.Add(triangles, vertices, Rings[0], k => Index(0, k), isEnd: false);
        LoftCaps.Add(triangles, vertices, Rings[^1], k => Index(Rings.Count - 1, k), isEnd: true);
        return new(vertices, triangles);

        static int Index(int ring, int place) => (ring * PlacesOfRing) + place;
    }

    private List<LoftRing> MakeRings(double[] at)
    {
        // Steps so short that a chord of the centreline is its arc to a part in a million.
        const double LineStepMm = 0.05;
        var rings = new List<LoftRing>();
        var (x, z) = (0.0, 0.0);
        for (var i = 0; i + 1 < at.Length; i++)
        {
            var count = (int)Math.Ceiling((at[i + 1] - at[i]) / RingSpacingMm);
            for (var step = 0; step < count; step++)
            {
                var (from, to) = (Place(i, step, count), Place(i, step + 1, count));
                rings.Add(Ring(from, x, z));
                var pieces = (int)Math.Ceiling((to - from) / LineStepMm);
                for (var p = 0; p < pieces; p++)
                {
                    var (sin, cos) = Math.SinCos(turns.At(from + ((to - from) * (p + 0.5) / pieces)));
                    x += (to - from) / pieces * cos;
                    z -= (to - from) / pieces * sin;
                }
            }
        }

        rings.Add(Ring(at[^1], x, z));
        return rings;

        double Place(int i, int step, int count) => step == count ? at[i + 1] : at[i] + ((at[i + 1] - at[i]) * step / count);
    }

    private LoftRing Ring(double atMm, double x, double z)
    {
        var turn = turns.At(atMm);
        var (sin, cos) = Math.SinCos(turn);
        var section = new SectionPoint[PlacesOfRing];
        var places = new SpacePoint[PlacesOfRing];
        for (var k = 0; k < PlacesOfRing; k++)
        {
            section[k] = new(xs[k].At(atMm), ys[k].At(atMm));

            // Seen with the flow the section's x is to the right; its y leans forward as the centreline turns down.
            places[k] = new(x + (section[k].YMm * sin), -section[k].XMm, z + (section[k].YMm * cos));
        }

        return new(atMm, turn, section, places, new(x, 0, z));
    }

    /// <summary>Neighbouring rings must not pass through each other: toward the inside of the turn the section must reach less far than
    /// the centreline's radius.</summary>
    private Problem? Crossing(string where)
    {
        for (var r = 0; r + 1 < Rings.Count; r++)
        {
            var (ring, next) = (Rings[r], Rings[r + 1]);
            var turn = next.TurnRad - ring.TurnRad;
            var inside = turn > 0 ? -Math.Min(ring.Section.Min(p => p.YMm), next.Section.Min(p => p.YMm)) : Math.Max(ring.Section.Max(p => p.YMm), next.Section.Max(p => p.YMm));
            var radius = (next.DistanceMm - ring.DistanceMm) / Math.Abs(turn);
            if (radius <= inside)
            {
                var before = Stations.Last(station => station.DistanceMm <= ring.DistanceMm + 1e-9);
                var after = Stations.First(station => station.DistanceMm >= next.DistanceMm - 1e-9);
                return LoftProblems.CrossesItself(where, before.Station, after.Station, radius, inside);
            }
        }

        return null;
    }
}
