using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Lettering;

/// <summary>Single-stroke lettering as on an engineering drawing. Text becomes plain lines, so a drawing looks alike everywhere and
/// needs no font file.</summary>
public static class StrokeFont
{
    /// <summary>Width of the pen as a share of the cap height.</summary>
    public const double PenShare = 0.1;

    /// <summary>Width of the pen of bold text as a share of the cap height.</summary>
    public const double BoldPenShare = 0.155;

    /// <summary>Distance of baselines as a multiple of the cap height.</summary>
    public const double LineSpacing = 1.8;

    private const double Gap = 2.4;
    private const double UnitsPerCap = 10;

    /// <summary>The width of a line of text, from the middle of its first stroke to the middle of its last, mm.</summary>
    public static double WidthMm(string text, double capHeightMm)
    {
        ArgumentNullException.ThrowIfNull(text);
        var width = text.Sum(character => GlyphTable.Find(character).Width + Gap);
        return Math.Max(0, width - Gap) * capHeightMm / UnitsPerCap;
    }

    /// <summary>True when every character of the text is drawn as itself, not as an empty box.</summary>
    public static bool CanWrite(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        return text.All(GlyphTable.Knows);
    }

    /// <summary>The lines of a text broken at spaces to fit a width; a single longer word stays whole.</summary>
    public static IReadOnlyList<string> Wrapped(string text, double capHeightMm, double maxWidthMm)
    {
        ArgumentNullException.ThrowIfNull(text);
        var lines = new List<string>();
        var line = string.Empty;
        foreach (var word in text.Split(' ', StringSplitOptions.RemoveEmptyEntries))
        {
            var longer = line.Length == 0 ? word : $"{line} {word}";
            if (line.Length > 0 && WidthMm(longer, capHeightMm) > maxWidthMm)
            {
                lines.Add(line);
                longer = word;
            }

            line = longer;
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return lines;
    }

    /// <summary>The text as lines to be drawn with <see cref="PenFor"/>.</summary>
    public static PathItem ToPath(TextItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        var scale = item.CapHeightMm / UnitsPerCap;
        var x = item.Anchor switch
        {
            TextAnchor.Start => 0,
            TextAnchor.Middle => -WidthMm(item.Text, item.CapHeightMm) / 2 / scale,
            _ => -WidthMm(item.Text, item.CapHeightMm) / scale,
        };
        var (sin, cos) = Math.SinCos(item.Turn.Radians);
        var contours = new List<Contour>();
        foreach (var character in item.Text)
        {
            var glyph = GlyphTable.Find(character);
            foreach (var stroke in glyph.Strokes)
            {
                var origin = x;
                contours.Add(new(
                    Array.ConvertAll(stroke, p => Placed((origin + p.X) * scale, p.Y * scale)),
                    IsClosed: false));
            }

            x += glyph.Width + Gap;
        }

        return new(contours, null, PenFor(item)) { Layer = item.Layer };

        PagePoint Placed(double right, double up) => item.Position.Moved((right * cos) - (up * sin), -(right * sin) - (up * cos));
    }

    /// <summary>The pen of a text: a tenth of the cap height wide, with round ends.</summary>
    public static Pen PenFor(TextItem item)
    {
        ArgumentNullException.ThrowIfNull(item);
        return new(item.Colour, item.CapHeightMm * (item.IsBold ? BoldPenShare : PenShare)) { IsRound = true };
    }
}
