namespace SectionScan.Drawings.Outlines;

/// <summary>Reads SVG transform lists: SVG 1.1, section 7.6.</summary>
internal static class SvgTransform
{
    /// <summary>The transform, or null when it is broken.</summary>
    public static Affine? Read(string? text)
    {
        var all = Affine.None;
        var rest = (text ?? string.Empty).Trim();
        while (rest.Length > 0)
        {
            var (open, close) = (rest.IndexOf('('), rest.IndexOf(')'));
            if (open < 0 || close < open || One(rest[..open].Trim(' ', ',', '\t', '\n', '\r'), Numbers(rest[(open + 1)..close])) is not { } one)
            {
                return null;
            }

            all = all.After(one);
            rest = rest[(close + 1)..].Trim(' ', ',', '\t', '\n', '\r');
        }

        return all;
    }

    private static Affine? One(string name, List<double>? n) => (name, n?.Count) switch
    {
        ("matrix", 6) => new(n![0], n[1], n[2], n[3], n[4], n[5]),
        ("translate", 1) => new(1, 0, 0, 1, n![0], 0),
        ("translate", 2) => new(1, 0, 0, 1, n![0], n[1]),
        ("scale", 1) => new(n![0], 0, 0, n[0], 0, 0),
        ("scale", 2) => new(n![0], 0, 0, n[1], 0, 0),
        ("rotate", 1) => Turn(n![0]),
        ("rotate", 3) => new Affine(1, 0, 0, 1, n![1], n[2]).After(Turn(n[0])).After(new(1, 0, 0, 1, -n[1], -n[2])),
        ("skewX", 1) => new(1, 0, Math.Tan(double.DegreesToRadians(n![0])), 1, 0, 0),
        ("skewY", 1) => new(1, Math.Tan(double.DegreesToRadians(n![0])), 0, 1, 0, 0),
        _ => null,
    };

    private static Affine Turn(double degrees)
    {
        var (sin, cos) = Math.SinCos(double.DegreesToRadians(degrees));
        return new(cos, sin, -sin, cos, 0, 0);
    }

    private static List<double>? Numbers(string text)
    {
        var reader = new SvgNumbers(text);
        var numbers = new List<double>();
        while (!reader.IsAtEnd)
        {
            if (reader.Number() is not { } number)
            {
                return null;
            }

            numbers.Add(number);
        }

        return numbers;
    }
}
