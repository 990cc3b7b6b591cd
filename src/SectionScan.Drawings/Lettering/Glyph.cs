namespace SectionScan.Drawings.Lettering;

/// <summary>The strokes of one character, in tenths of the cap height, x right from the glyph's left, y up from the baseline.</summary>
/// <param name="Width">The width without the space to the next character.</param>
/// <param name="Strokes">Each stroke as a run of points.</param>
internal sealed record Glyph(double Width, IReadOnlyList<(double X, double Y)[]> Strokes)
{
    private const double StepDegrees = 15;

    /// <summary>Reads "width|stroke;stroke". A stroke is a list of points "x,y" and elliptic arcs "(centre x,centre y,radius x,radius
    /// y,from,to)" with angles in degrees, counter-clockwise positive; all are joined by straight lines.</summary>
    public static Glyph Parse(string text)
    {
        var parts = text.Split('|');
        var strokes = parts[1].Split(';', StringSplitOptions.RemoveEmptyEntries).Select(ParseStroke).ToArray();
        return new(Number(parts[0]), strokes);
    }

    /// <summary>The same glyph moved.</summary>
    public Glyph Moved(double x, double y) => this with { Strokes = Mapped(p => (p.X + x, p.Y + y)) };

    /// <summary>The same glyph scaled about its origin.</summary>
    public Glyph Scaled(double factor) => new(Width * factor, Mapped(p => (p.X * factor, p.Y * factor)));

    /// <summary>This glyph with another's strokes drawn over it; the width stays.</summary>
    public Glyph With(Glyph other) => this with { Strokes = [.. Strokes, .. other.Strokes] };

    private (double X, double Y)[][] Mapped(Func<(double X, double Y), (double X, double Y)> map)
        => [.. Strokes.Select(stroke => Array.ConvertAll(stroke, p => map(p)))];

    private static (double X, double Y)[] ParseStroke(string text)
    {
        var points = new List<(double X, double Y)>();
        foreach (var token in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var numbers = Array.ConvertAll(token.Trim('(', ')').Split(','), Number);
            if (numbers.Length == 2)
            {
                points.Add((numbers[0], numbers[1]));
                continue;
            }

            var steps = Math.Max(1, (int)Math.Ceiling(Math.Abs(numbers[5] - numbers[4]) / StepDegrees));
            for (var i = 0; i <= steps; i++)
            {
                var (sin, cos) = Math.SinCos(double.DegreesToRadians(numbers[4] + ((numbers[5] - numbers[4]) * i / steps)));
                points.Add((numbers[0] + (numbers[2] * cos), numbers[1] + (numbers[3] * sin)));
            }
        }

        return [.. points];
    }

    private static double Number(string text) => double.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
}
