using System.Globalization;

namespace SectionScan.Drawings.Outlines;

/// <summary>Reads letters and numbers of SVG path data and transforms one after another, after the grammar of SVG 1.1, section 8.3.9:
/// blanks and commas part numbers, and so does a sign or a second point.</summary>
internal sealed class SvgNumbers(string text)
{
    private int at;

    /// <summary>True when nothing is left.</summary>
    public bool IsAtEnd
    {
        get
        {
            SkipBlanks();
            return at >= text.Length;
        }
    }

    /// <summary>The next letter, or null when a number comes next.</summary>
    public char? Letter()
    {
        SkipBlanks();
        return at < text.Length && char.IsAsciiLetter(text[at]) ? text[at++] : null;
    }

    /// <summary>The next number, or null when there is none.</summary>
    public double? Number()
    {
        SkipBlanks();
        var start = at;
        if (at < text.Length && text[at] is '+' or '-')
        {
            at++;
        }

        SkipDigits();
        if (at < text.Length && text[at] == '.')
        {
            at++;
            SkipDigits();
        }

        if (at < text.Length && text[at] is 'e' or 'E' && IsExponent(at + 1))
        {
            at += text[at + 1] is '+' or '-' ? 2 : 1;
            SkipDigits();
        }

        return double.TryParse(text.AsSpan(start, at - start), NumberStyles.Float, CultureInfo.InvariantCulture, out var value) && double.IsFinite(value)
            ? value
            : null;
    }

    /// <summary>A flag of an arc, 0 or 1, which may stand right before the next number.</summary>
    public bool? Flag()
    {
        SkipBlanks();
        return at < text.Length && text[at] is '0' or '1' ? text[at++] == '1' : null;
    }

    private bool IsExponent(int next) => next < text.Length
        && (char.IsAsciiDigit(text[next]) || (text[next] is '+' or '-' && next + 1 < text.Length && char.IsAsciiDigit(text[next + 1])));

    private void SkipDigits()
    {
        while (at < text.Length && char.IsAsciiDigit(text[at]))
        {
            at++;
        }
    }

    private void SkipBlanks()
    {
        while (at < text.Length && (char.IsWhiteSpace(text[at]) || text[at] == ','))
        {
            at++;
        }
    }
}
