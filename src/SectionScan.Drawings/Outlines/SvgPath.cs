using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Outlines;

/// <summary>Reads SVG path data into corners: SVG 1.1, section 8.3; the elliptical arc after its implementation notes, F.6.5.</summary>
internal sealed class SvgPath(string layer, string data, Chords chords)
{
    private readonly SvgNumbers numbers = new(data);
    private readonly List<DrawnLine> lines = [];
    private List<SectionPoint> points = [];
    private SectionPoint start;
    private SectionPoint at;
    private SectionPoint? cubicHandle;
    private SectionPoint? quadraticHandle;

    /// <summary>The sub-paths, or null when the data are broken.</summary>
    public IReadOnlyList<DrawnLine>? Read()
    {
        char? command = null;
        while (!numbers.IsAtEnd)
        {
            if (numbers.Letter() is { } letter)
            {
                command = letter;
            }
            else if (command is null or 'Z' or 'z')
            {
                return null;
            }

            if (!Step(command.Value))
            {
                return null;
            }

            // Further pairs after a move are lines.
            command = command switch { 'M' => 'L', 'm' => 'l', _ => command };
        }

        End(isClosed: false);
        return lines;
    }

    private bool Step(char command)
    {
        var isRelative = char.IsAsciiLetterLower(command);
        var (cubic, quadratic) = (cubicHandle, quadraticHandle);
        (cubicHandle, quadraticHandle) = (null, null);
        switch (char.ToUpperInvariant(command))
        {
            case 'M':
                if (Point(isRelative) is not { } to)
                {
                    return false;
                }

                End(isClosed: false);
                (start, at) = (to, to);
                points = [to];
                return true;
            case 'Z':
                End(isClosed: true);
                at = start;
                points = [start];
                return true;
            case 'L':
                return Line(Point(isRelative));
            case 'H':
                return Line(numbers.Number() is { } x ? new SectionPoint(isRelative ? at.XMm + x : x, at.YMm) : null);
            case 'V':
                return Line(numbers.Number() is { } y ? new SectionPoint(at.XMm, isRelative ? at.YMm + y : y) : null);
            case 'C':
                return Cubic(Point(isRelative), Point(isRelative), Point(isRelative));
            case 'S':
                return Cubic(Reflected(cubic), Point(isRelative), Point(isRelative));
            case 'Q':
                return Quadratic(Point(isRelative), Point(isRelative));
            case 'T':
                return Quadratic(Reflected(quadratic), Point(isRelative));
            case 'A':
                return Arc(isRelative);
            default:
                return false;
        }
    }

    private SectionPoint? Point(bool isRelative) => numbers.Number() is { } x && numbers.Number() is { } y
        ? isRelative ? new(at.XMm + x, at.YMm + y) : new(x, y)
        : null;

    private SectionPoint Reflected(SectionPoint? handle) =>
        handle is { } h ? new((2 * at.XMm) - h.XMm, (2 * at.YMm) - h.YMm) : at;

    private bool Line(SectionPoint? to)
    {
        if (to is not { } end || points.Count == 0)
        {
            return false;
        }

        points.Add(end);
        at = end;
        return true;
    }

    private bool Cubic(SectionPoint? first, SectionPoint? second, SectionPoint? to)
    {
        if (first is not { } b || second is not { } c || to is not { } d || points.Count == 0)
        {
            return false;
        }

        var a = at;
        chords.AddCurve(
            points,
            t =>
            {
                var s = 1 - t;
                var (wa, wb, wc, wd) = (s * s * s, 3 * s * s * t, 3 * s * t * t, t * t * t);
                return new((wa * a.XMm) + (wb * b.XMm) + (wc * c.XMm) + (wd * d.XMm), (wa * a.YMm) + (wb * b.YMm) + (wc * c.YMm) + (wd * d.YMm));
            },
            0,
            1);
        (at, cubicHandle) = (d, c);
        return true;
    }

    private bool Quadratic(SectionPoint? handle, SectionPoint? to)
    {
        if (handle is not { } b || to is not { } c || points.Count == 0)
        {
            return false;
        }

        var a = at;
        chords.AddCurve(
            points,
            t =>
            {
                var s = 1 - t;
                var (wa, wb, wc) = (s * s, 2 * s * t, t * t);
                return new((wa * a.XMm) + (wb * b.XMm) + (wc * c.XMm), (wa * a.YMm) + (wb * b.YMm) + (wc * c.YMm));
            },
            0,
            1);
        (at, quadraticHandle) = (c, b);
        return true;
    }

    private bool Arc(bool isRelative)
    {
        if (numbers.Number() is not { } rx || numbers.Number() is not { } ry || numbers.Number() is not { } turnDeg
            || numbers.Flag() is not { } isLarge || numbers.Flag() is not { } isPositive || Point(isRelative) is not { } to || points.Count == 0)
        {
            return false;
        }

        (rx, ry) = (Math.Abs(rx), Math.Abs(ry));
        if (rx == 0 || ry == 0 || at == to)
        {
            return at == to || Line(to);
        }

        var (sin, cos) = Math.SinCos(double.DegreesToRadians(turnDeg));
        var (hx, hy) = ((at.XMm - to.XMm) / 2, (at.YMm - to.YMm) / 2);
        var (x1, y1) = ((cos * hx) + (sin * hy), (cos * hy) - (sin * hx));
        var need = ((x1 * x1) / (rx * rx)) + ((y1 * y1) / (ry * ry));
        if (need > 1)
        {
            (rx, ry) = (rx * Math.Sqrt(need), ry * Math.Sqrt(need));
        }

        var share = Math.Sqrt(Math.Max(0, (1 / ((x1 * x1 / (rx * rx)) + (y1 * y1 / (ry * ry)))) - 1)) * (isLarge == isPositive ? -1 : 1);
        var (cx, cy) = (share * rx * y1 / ry, -share * ry * x1 / rx);
        var centre = new SectionPoint((cos * cx) - (sin * cy) + ((at.XMm + to.XMm) / 2), (sin * cx) + (cos * cy) + ((at.YMm + to.YMm) / 2));
        var from = Math.Atan2((y1 - cy) / ry, (x1 - cx) / rx);
        var sweep = Math.IEEERemainder(Math.Atan2((-y1 - cy) / ry, (-x1 - cx) / rx) - from, 2 * Math.PI);
        sweep += isPositive && sweep < 0 ? 2 * Math.PI : !isPositive && sweep > 0 ? -2 * Math.PI : 0;
        chords.AddArc(points, centre, new(cos * rx, sin * rx), new(-sin * ry, cos * ry), from, sweep);
        points[^1] = to;
        at = to;
        return true;
    }

    private void End(bool isClosed)
    {
        if (points.Count > 1)
        {
            // Many programs write the first corner again before closing.
            if (isClosed && points.Count > 2 && points[^1].DistanceTo(points[0]) <= chords.Tolerance)
            {
                points.RemoveAt(points.Count - 1);
            }

            lines.Add(new(layer, points, isClosed));
        }

        points = [];
    }
}
