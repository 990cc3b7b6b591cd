using NetTopologySuite.Geometries;
using NetTopologySuite.Triangulate.Polygon;
using SectionScan.Metrology.Solids;

namespace SectionScan.Porting.Lofts;

/// <summary>Closes a lofted solid at its ends.</summary>
internal static class LoftCaps
{
    /// <summary>Adds the triangles of one end. Where every place is seen from the centre, they meet there; else the polygon is cut up.</summary>
    public static void Add(
        List<(int A, int B, int C)> triangles, List<SpacePoint> vertices, LoftRing ring, Func<int, int> indexOf, bool isEnd)
    {
        var section = ring.Section;
        var isSeenWhole = Enumerable.Range(0, section.Count).All(k =>
        {
            var (a, b) = (section[k], section[(k + 1) % section.Count]);
            return (a.XMm * b.YMm) - (a.YMm * b.XMm) > 0;
        });
        if (isSeenWhole)
        {
            vertices.Add(ring.Centre);
            for (var k = 0; k < section.Count; k++)
            {
                Add(vertices.Count - 1, indexOf(k), indexOf((k + 1) % section.Count));
            }

            return;
        }

        var places = new Dictionary<(double, double), int>();
        var corners = new Coordinate[section.Count + 1];
        for (var k = 0; k <= section.Count; k++)
        {
            var p = section[k % section.Count];
            corners[k] = new(p.XMm, p.YMm);
            places[(p.XMm, p.YMm)] = indexOf(k % section.Count);
        }

        foreach (var piece in ((GeometryCollection)PolygonTriangulator.Triangulate(new Polygon(new LinearRing(corners)))).Geometries)
        {
            var at = piece.Coordinates;
            var isLeft = ((at[1].X - at[0].X) * (at[2].Y - at[0].Y)) - ((at[1].Y - at[0].Y) * (at[2].X - at[0].X)) > 0;
            var (a, b, c) = (places[(at[0].X, at[0].Y)], places[(at[1].X, at[1].Y)], places[(at[2].X, at[2].Y)]);
            Add(a, isLeft ? b : c, isLeft ? c : b);
        }

        // Counter-clockwise as seen with the flow is clockwise as seen from behind the end.
        void Add(int a, int b, int c) => triangles.Add(isEnd ? (a, c, b) : (a, b, c));
    }
}
