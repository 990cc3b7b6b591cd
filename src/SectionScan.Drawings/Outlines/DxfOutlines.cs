using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>Reads the lines of a DXF drawing: LINE, LWPOLYLINE, POLYLINE, ARC, CIRCLE, ELLIPSE and SPLINE. Text, dimensions, points,
/// hatches and blocks are passed over.</summary>
public static class DxfOutlines
{
    // A tenth of a micrometre at the size of a port; curves of any drawing unit are cut as finely as that.
    private const double ToleranceMm = 0.0002;
    private const double SmallestUnitMm = 1;

    private const double FlatSlack = 1e-9;
    private const int FlagClosed = 1;
    private const int FlagSplineFrame = 16;
    private const int FlagSplineFit = 4;
    private const int FlagsOfMeshes = 16 | 64;

    // $INSUNITS of the DXF Reference: inch, foot, millimetre, centimetre, metre, thousandth of an inch, micrometre, decimetre.
    private static readonly Dictionary<int, double> Units = new()
    {
        [1] = Inch.Mm,
        [2] = 304.8,
        [4] = 1,
        [5] = 10,
        [6] = 1000,
        [9] = 0.0254,
        [13] = 0.001,
        [14] = 100,
    };

    /// <summary>Reads a drawing.</summary>
    /// <param name="text">The file's text.</param>
    /// <param name="where">The file, for the message of a refusal.</param>
    /// <param name="mmPerUnit">How many mm a drawing unit is, when a person says so; decides how finely curves are cut.</param>
    /// <returns>The lines; or <c>drawing-broken</c>, <c>drawing-not-flat</c> or <c>drawing-spline-unusable</c>.</returns>
    public static Result<DrawnFile> Read(string text, string where, double? mmPerUnit = null)
    {
        ArgumentNullException.ThrowIfNull(text);
        return DxfFile.Read(text, where).Then(file =>
        {
            double? stated = file.UnitCode is { } code && Units.TryGetValue(code, out var mm) ? mm : null;
            return Lines(file, new(ToleranceMm / (mmPerUnit ?? stated ?? SmallestUnitMm)), where)
                .Then<DrawnFile>(lines => new DrawnFile(lines, stated));
        });
    }

    private static Result<List<DrawnLine>> Lines(DxfFile file, Chords chords, string where)
    {
        var lines = new List<DrawnLine>();
        foreach (var entity in file.Entities.Where(each => each.Whole(67) == 0))
        {
            if (!Line(entity, chords, where).TryGet(out var drawn, out var problem))
            {
                return problem;
            }

            if (drawn.Points.Count > 1)
            {
                lines.Add(drawn);
            }
        }

        return lines;
    }

    // A line without points stands for what is passed over.
    private static Result<DrawnLine> Line(DxfEntity entity, Chords chords, string where)
    {
        Func<DxfEntity, Chords, DrawnLine?>? read = entity.Kind switch
        {
            "LINE" => Straight,
            "ARC" => Arc,
            "CIRCLE" => Circle,
            "ELLIPSE" => Ellipse,
            "LWPOLYLINE" => LightPolyline,
            "POLYLINE" when (entity.Flags & FlagsOfMeshes) == 0 => Polyline,
            "SPLINE" => null,
            _ => (_, _) => new(entity.Layer, [], false),
        };
        if (entity.Groups.FirstOrDefault(group => IsCoordinate(group.Code) && group.Number is null) is { Value: not null } odd && entity.Kind is not ("TEXT" or "MTEXT"))
        {
            return OutlineFileProblems.BrokenLine(where, odd.Line + 1, $"a number should stand here and not \"{odd.Value}\" ({entity.Kind}).");
        }

        if (read is null)
        {
            return Spline(entity, chords, where);
        }

        if (Math.Abs(entity.Number(210)) > FlatSlack || Math.Abs(entity.Number(220)) > FlatSlack)
        {
            return OutlineFileProblems.NotFlat(where, FormattableString.Invariant($"The {entity.Kind} at line {entity.Line}"));
        }

        return read(entity, chords) is { } line
            ? line
            : OutlineFileProblems.BrokenLine(where, entity.Line, $"the {entity.Kind} that begins here lacks a coordinate or a radius.");
    }

    private static bool IsCoordinate(int code) => code is (>= 10 and <= 59) or 210 or 220 or 230;

    private static DrawnLine? Straight(DxfEntity entity, Chords chords) =>
        entity.Point(10) is { } start && entity.Point(11) is { } end ? new(entity.Layer, [start, end], false) : null;

    private static DrawnLine? Circle(DxfEntity entity, Chords chords)
    {
        if (entity.Point(10) is not { } centre || entity.Find(40) is not { } radius || radius <= 0)
        {
            return null;
        }

        var points = new List<SectionPoint>();
        chords.AddArc(points, centre, new(radius, 0), new(0, radius), 0, 2 * Math.PI);
        return Placed(entity, points, true);
    }

    private static DrawnLine? Arc(DxfEntity entity, Chords chords)
    {
        if (entity.Point(10) is not { } centre || entity.Find(40) is not { } radius || entity.Find(50) is not { } from || entity.Find(51) is not { } to || radius <= 0)
        {
            return null;
        }

        // Always counter-clockwise; equal angles are the whole turn.
        var sweep = Math.IEEERemainder(to - from, 360);
        sweep = sweep <= 0 ? sweep + 360 : sweep;
        var start = double.DegreesToRadians(from);
        var points = new List<SectionPoint> { new(centre.XMm + (radius * Math.Cos(start)), centre.YMm + (radius * Math.Sin(start))) };
        chords.AddArc(points, centre, new(radius, 0), new(0, radius), start, double.DegreesToRadians(sweep));
        return Placed(entity, points, false);
    }

    private static DrawnLine? Ellipse(DxfEntity entity, Chords chords)
    {
        if (entity.Point(10) is not { } centre || entity.Point(11) is not { } major || entity.Find(40) is not { } ratio || ratio == 0)
        {
            return null;
        }

        // World coordinates, unlike the others; seen from below the turn goes the other way.
        var side = entity.Number(230, 1) < 0 ? -ratio : ratio;
        var minor = new SectionPoint(-major.YMm * side, major.XMm * side);
        var from = entity.Number(41);
        var sweep = entity.Number(42, 2 * Math.PI) - from;
        sweep = sweep <= 0 ? sweep + (2 * Math.PI) : sweep;
        var isWhole = Math.Abs(sweep - (2 * Math.PI)) < FlatSlack;
        var points = new List<SectionPoint>();
        if (!isWhole)
        {
            var (sin, cos) = Math.SinCos(from);
            points.Add(new(centre.XMm + (cos * major.XMm) + (sin * minor.XMm), centre.YMm + (cos * major.YMm) + (sin * minor.YMm)));
        }

        chords.AddArc(points, centre, major, minor, from, sweep);
        return new(entity.Layer, points, isWhole);
    }

    private static DrawnLine? LightPolyline(DxfEntity entity, Chords chords)
    {
        var corners = new List<(SectionPoint At, double Bulge)>();
        double? x = null;
        foreach (var group in entity.Groups)
        {
            switch (group.Code)
            {
                case 10:
                    x = group.Number;
                    break;
                case 20 when x is { } known:
                    corners.Add((new(known, group.Number!.Value), 0));
                    x = null;
                    break;
                case 42 when corners.Count > 0:
                    corners[^1] = (corners[^1].At, group.Number!.Value);
                    break;
                default:
                    break;
            }
        }

        return x is null && corners.Count >= 2 ? Placed(entity, Bulged(corners, (entity.Flags & FlagClosed) != 0, chords), (entity.Flags & FlagClosed) != 0) : null;
    }

    private static DrawnLine? Polyline(DxfEntity entity, Chords chords)
    {
        var isSplineFit = (entity.Flags & FlagSplineFit) != 0;
        var corners = new List<(SectionPoint At, double Bulge)>();
        foreach (var vertex in entity.Vertices.Where(each => !(isSplineFit && (each.Flags & FlagSplineFrame) != 0)))
        {
            if (vertex.Point(10) is not { } at)
            {
                return null;
            }

            corners.Add((at, vertex.Number(42)));
        }

        var isClosed = (entity.Flags & FlagClosed) != 0;
        return corners.Count >= 2 ? Placed(entity, Bulged(corners, isClosed, chords), isClosed) : null;
    }

    private static Result<DrawnLine> Spline(DxfEntity entity, Chords chords, string where)
    {
        var (xs, ys) = (entity.Numbers(10), entity.Numbers(20));
        if (xs.Count == 0 || xs.Count != ys.Count)
        {
            return OutlineFileProblems.SplineUnusable(where, entity.Line, "has no control points");
        }

        if (SplineCurve.From(entity.Whole(71), entity.Numbers(40), [.. xs.Zip(ys, (x, y) => new SectionPoint(x, y))], entity.Numbers(41)) is not { } curve)
        {
            return OutlineFileProblems.SplineUnusable(where, entity.Line, "has knots, control points and weights that do not belong together");
        }

        // World coordinates. A closed one ends where it began, in the corners as well as on the paper.
        var points = new List<SectionPoint>();
        curve.AddTo(points, chords);
        var isClosed = points.Count > 3 && points[0].DistanceTo(points[^1]) <= chords.Tolerance;
        if (isClosed)
        {
            points.RemoveAt(points.Count - 1);
        }

        return new DrawnLine(entity.Layer, points, isClosed);
    }

    private static List<SectionPoint> Bulged(List<(SectionPoint At, double Bulge)> corners, bool isClosed, Chords chords)
    {
        var points = new List<SectionPoint> { corners[0].At };
        for (var i = 1; i < corners.Count; i++)
        {
            chords.AddBulge(points, corners[i].At, corners[i - 1].Bulge);
        }

        if (isClosed)
        {
            chords.AddBulge(points, corners[0].At, corners[^1].Bulge);
            points.RemoveAt(points.Count - 1);
        }

        return points;
    }

    // An entity drawn from below (extrusion −z) has its x axis the other way round: the arbitrary axis rule of the DXF Reference.
    private static DrawnLine Placed(DxfEntity entity, List<SectionPoint> points, bool isClosed) => new(
        entity.Layer, entity.Number(230, 1) < 0 ? points.ConvertAll(p => new SectionPoint(-p.XMm, p.YMm)) : points, isClosed);
}
