using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Comparison;

/// <summary>Finds the nearest edge of a polyline or polygon: edges in the cells of a square grid, searched ring by ring.</summary>
/// <remarks>Own code and not the library's tree: an alignment asks some ten thousand times, a comparison some thousand, and the
/// foot on the edge is wanted with the distance.</remarks>
internal sealed class EdgeIndex
{
    /// <summary>Cells along the longer side: a few edges a cell for an outline of 720 corners.</summary>
    private const int Cells = 32;

    private readonly SectionPoint[] corners;
    private readonly double left;
    private readonly double floor;
    private readonly double cellMm;
    private readonly int columns;
    private readonly int rows;
    private readonly List<int>?[] cells;

    /// <param name="corners">Two or more corners, mm.</param>
    /// <param name="isClosed">True when an edge leads from the last corner back to the first.</param>
    public EdgeIndex(ReadOnlySpan<SectionPoint> corners, bool isClosed)
    {
        if (corners.Length < 2)
        {
            throw new ArgumentException($"Edges need at least 2 points, not {corners.Length}.", nameof(corners));
        }

        this.corners = corners.ToArray();
        EdgeCount = isClosed ? corners.Length : corners.Length - 1;
        (left, floor) = (corners[0].XMm, corners[0].YMm);
        var (right, roof) = (left, floor);
        foreach (var corner in corners)
        {
            (left, right) = (Math.Min(left, corner.XMm), Math.Max(right, corner.XMm));
            (floor, roof) = (Math.Min(floor, corner.YMm), Math.Max(roof, corner.YMm));
        }

        var size = Math.Max(right - left, roof - floor);
        cellMm = size > 0 ? size / Cells : 1;
        columns = (int)((right - left) / cellMm) + 1;
        rows = (int)((roof - floor) / cellMm) + 1;
        cells = new List<int>?[columns * rows];
        for (var edge = 0; edge < EdgeCount; edge++)
        {
            Enter(edge);
        }
    }

    public int EdgeCount { get; }

    public SectionPoint From(int edge) => corners[edge];

    public SectionPoint To(int edge) => corners[edge + 1 == corners.Length ? 0 : edge + 1];

    /// <summary>The nearest place on any edge.</summary>
    public EdgeFoot Nearest(SectionPoint point)
    {
        var (column, row) = (Column(point.XMm), Row(point.YMm));
        var best = new EdgeFoot(-1, point, double.PositiveInfinity);
        for (var ring = 0; ring <= Math.Max(columns, rows) && (ring - 1) * cellMm <= best.DistanceMm; ring++)
        {
            for (var r = Math.Max(0, row - ring); r <= Math.Min(rows - 1, row + ring); r++)
            {
                var step = Math.Abs(r - row) == ring || ring == 0 ? 1 : 2 * ring;
                for (var c = column - ring; c <= column + ring; c += step)
                {
                    if (c >= 0 && c < columns && cells[(r * columns) + c] is { } edges)
                    {
                        best = NearestOf(edges, point, best);
                    }
                }
            }
        }

        return best;
    }

    /// <summary>The nearest place on one edge.</summary>
    public EdgeFoot FootOn(int edge, SectionPoint point)
    {
        var (from, to) = (From(edge), To(edge));
        var (x, y) = (to.XMm - from.XMm, to.YMm - from.YMm);
        var square = (x * x) + (y * y);
        var share = square == 0 ? 0 : Math.Clamp((((point.XMm - from.XMm) * x) + ((point.YMm - from.YMm) * y)) / square, 0, 1);
        var foot = new SectionPoint(from.XMm + (share * x), from.YMm + (share * y));
        return new(edge, foot, foot.DistanceTo(point));
    }

    /// <summary>The unit vector from a foot to the place it belongs to; on the edge itself, square to it.</summary>
    public (double X, double Y) NormalAt(EdgeFoot foot, SectionPoint place)
    {
        if (foot.DistanceMm > 1e-9)
        {
            return ((place.XMm - foot.Point.XMm) / foot.DistanceMm, (place.YMm - foot.Point.YMm) / foot.DistanceMm);
        }

        var (from, to) = (From(foot.Edge), To(foot.Edge));
        var length = from.DistanceTo(to);
        return ((to.YMm - from.YMm) / length, (from.XMm - to.XMm) / length);
    }

    private EdgeFoot NearestOf(List<int> edges, SectionPoint point, EdgeFoot best)
    {
        foreach (var edge in edges)
        {
            var foot = FootOn(edge, point);
            best = foot.DistanceMm < best.DistanceMm ? foot : best;
        }

        return best;
    }

    /// <summary>Enters an edge in every cell of its bounding box: edges of an outline are short, and a cell too many does no harm.</summary>
    private void Enter(int edge)
    {
        var (from, to) = (From(edge), To(edge));
        for (var r = Row(Math.Min(from.YMm, to.YMm)); r <= Row(Math.Max(from.YMm, to.YMm)); r++)
        {
            for (var c = Column(Math.Min(from.XMm, to.XMm)); c <= Column(Math.Max(from.XMm, to.XMm)); c++)
            {
                (cells[(r * columns) + c] ??= []).Add(edge);
            }
        }
    }

    private int Column(double xMm) => (int)Math.Clamp((xMm - left) / cellMm, 0, columns - 1);

    private int Row(double yMm) => (int)Math.Clamp((yMm - floor) / cellMm, 0, rows - 1);
}
