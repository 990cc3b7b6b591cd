namespace SectionScan.Metrology.Solids;

/// <summary>A surface of triangles.</summary>
/// <param name="Vertices">The corners, each once, mm.</param>
/// <param name="Triangles">Three indices of corners each, counter-clockwise seen from outside.</param>
public sealed record TriangleMesh(IReadOnlyList<SpacePoint> Vertices, IReadOnlyList<(int A, int B, int C)> Triangles)
{
    /// <summary>The volume enclosed by a closed surface, mm³.</summary>
    /// <remarks>The sum of the tetrahedra from one corner to every triangle (divergence theorem).</remarks>
    public double VolumeMm3
    {
        get
        {
            var origin = Vertices[0];
            return Triangles.Sum(t => (Vertices[t.A] - origin).Dot((Vertices[t.B] - origin).Cross(Vertices[t.C] - origin))) / 6;
        }
    }

    /// <summary>True when every edge belongs to exactly two triangles that run along it in opposite directions: the surface has no hole
    /// and one outside.</summary>
    public bool IsClosed
    {
        get
        {
            var edges = new HashSet<(int, int)>(3 * Triangles.Count);
            foreach (var (a, b, c) in Triangles)
            {
                if (!edges.Add((a, b)) || !edges.Add((b, c)) || !edges.Add((c, a)))
                {
                    return false;
                }
            }

            return edges.All(edge => edges.Contains((edge.Item2, edge.Item1)));
        }
    }

    /// <summary>The outward unit normal of a triangle; zero for one without area.</summary>
    public SpacePoint NormalOf((int A, int B, int C) triangle)
    {
        var normal = (Vertices[triangle.B] - Vertices[triangle.A]).Cross(Vertices[triangle.C] - Vertices[triangle.A]);
        return normal.Length is var length && length > 0 ? new(normal.XMm / length, normal.YMm / length, normal.ZMm / length) : default;
    }
}
