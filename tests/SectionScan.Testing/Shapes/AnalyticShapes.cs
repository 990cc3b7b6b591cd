using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Testing.Shapes;

/// <summary>Outlines of shapes whose measures have a closed form. Their corners lie on the shape, so that a polygon is a little too
/// small: <see cref="InscribedAreaError"/>, <see cref="InscribedLengthError"/>.</summary>
public static class AnalyticShapes
{
    /// <summary>How many corners a shape has unless told otherwise: as many as a digitised section.</summary>
    public const int Corners = 720;

    /// <summary>Relative loss of area of a regular 720-gon in its circle, 1 − sin(2π/N)·N/2π.</summary>
    public const double InscribedAreaError = 1.26923e-5;

    /// <summary>Relative loss of length of a regular 720-gon in its circle, 1 − sin(π/N)·N/π.</summary>
    public const double InscribedLengthError = 3.1731e-6;

    public static Outline Circle(double radiusMm, int corners = Corners) => Ellipse(radiusMm, radiusMm, corners);

    /// <summary>Semi-axes along x and y, centre at the origin, corners at even steps of the parameter angle.</summary>
    public static Outline Ellipse(double semiAxisXMm, double semiAxisYMm, int corners = Corners) => Of(
        Enumerable.Range(0, corners).Select(i => Math.SinCos(2 * Math.PI * i / corners))
            .Select(turn => new SectionPoint(semiAxisXMm * turn.Cos, semiAxisYMm * turn.Sin)));

    /// <summary>|x/a|ⁿ + |y/b|ⁿ = 1. Corners at even steps of a parameter, denser where the shape turns.</summary>
    public static Outline Superellipse(double semiAxisXMm, double semiAxisYMm, double exponent, int corners = 4 * Corners) => Of(
        Enumerable.Range(0, corners).Select(i => Math.SinCos(2 * Math.PI * i / corners))
            .Select(turn => new SectionPoint(
                semiAxisXMm * Math.Sign(turn.Cos) * Math.Pow(Math.Abs(turn.Cos), 2 / exponent),
                semiAxisYMm * Math.Sign(turn.Sin) * Math.Pow(Math.Abs(turn.Sin), 2 / exponent))));

    /// <summary>Two half circles of a radius joined by level sides, centre at the origin.</summary>
    public static Outline Stadium(double radiusMm, double straightMm, int corners = Corners) => Of(
    [
        .. Line(new(-straightMm / 2, -radiusMm), new(straightMm / 2, -radiusMm), corners / 6),
        .. Arc(straightMm / 2, radiusMm, -90, 90, corners / 3),
        .. Line(new(straightMm / 2, radiusMm), new(-straightMm / 2, radiusMm), corners / 6),
        .. Arc(-straightMm / 2, radiusMm, 90, 270, corners / 3),
    ]);

    /// <summary>A circle less the segment of a height at its bottom: a flat floor. Circle centre at the origin.</summary>
    public static Outline DSection(double radiusMm, double segmentHeightMm, int corners = Corners)
    {
        var half = double.RadiansToDegrees(Math.Acos((radiusMm - segmentHeightMm) / radiusMm));
        var arc = Arc(0, radiusMm, half - 90, 270 - half, corners * 4 / 5).ToList();
        var end = new SectionPoint(-arc[0].XMm, arc[0].YMm);
        return Of([.. arc, .. Line(end, arc[0], corners / 5)]);
    }

    /// <summary>The segment of a height at the bottom of a circle, circle centre at the origin.</summary>
    public static Outline CircularSegment(double diameterMm, double heightMm, int corners = Corners)
    {
        var radius = diameterMm / 2;
        var half = double.RadiansToDegrees(Math.Acos((radius - heightMm) / radius));
        return Of([.. Arc(0, radius, -90 - half, half - 90, corners), new(radius * Math.Sin(double.DegreesToRadians(half)), heightMm - radius)]);
    }

    public static Outline RegularPolygon(int corners, double circumradiusMm) => Circle(circumradiusMm, corners);

    public static Outline Rectangle(double widthMm, double heightMm) => Polygon(
        (-widthMm / 2, -heightMm / 2), (widthMm / 2, -heightMm / 2), (widthMm / 2, heightMm / 2), (-widthMm / 2, heightMm / 2));

    /// <summary>Three arcs, each about the corner across.</summary>
    public static Outline Reuleaux(double widthMm, int corners = Corners)
    {
        var apex = new SectionPoint(0, widthMm * Math.Sqrt(3) / 2);
        return Of(
        [
            .. Arc(-widthMm / 2, widthMm, 0, 60, corners / 3),
            .. Arc(widthMm / 2, widthMm, 120, 180, corners / 3),
            .. Arc(0, widthMm, 240, 300, corners / 3).Select(p => new SectionPoint(p.XMm, p.YMm + apex.YMm)),
        ]);
    }

    /// <summary>The polygon of the field's own worked example: six corners, no symmetry.</summary>
    public static Outline SixCorners() => Polygon((0, 0), (40, 0), (40, 20), (25, 30), (10, 30), (0, 18));

    public static Outline Polygon(params (double X, double Y)[] corners) => Of(corners.Select(c => new SectionPoint(c.X, c.Y)));

    private static Outline Of(IEnumerable<SectionPoint> points) => Outline.From(points, "analytic shape").ValueOrThrow();

    /// <summary>From one angle to the other about (x, 0), the last point left out.</summary>
    private static IEnumerable<SectionPoint> Arc(double centreXMm, double radiusMm, double fromDegrees, double toDegrees, int steps) =>
        Enumerable.Range(0, steps)
            .Select(i => Math.SinCos(double.DegreesToRadians(fromDegrees + ((toDegrees - fromDegrees) * i / steps))))
            .Select(turn => new SectionPoint(centreXMm + (radiusMm * turn.Cos), radiusMm * turn.Sin));

    private static IEnumerable<SectionPoint> Line(SectionPoint from, SectionPoint to, int steps) =>
        Enumerable.Range(0, steps).Select(i => (double)i / steps)
            .Select(share => new SectionPoint(
                from.XMm + (share * (to.XMm - from.XMm)), from.YMm + (share * (to.YMm - from.YMm))));
}
