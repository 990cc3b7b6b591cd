using System.Globalization;

namespace SectionScan.Drawings.Pages;

/// <summary>A colour in sRGB, eight bits a channel; the default is black.</summary>
/// <param name="Red">Red, 0 to 255.</param>
/// <param name="Green">Green, 0 to 255.</param>
/// <param name="Blue">Blue, 0 to 255.</param>
public readonly record struct Colour(byte Red, byte Green, byte Blue)
{
    /// <summary>Full black: what a target is printed in.</summary>
    public static Colour Black => new(0, 0, 0);

    /// <summary>Paper white.</summary>
    public static Colour White => new(255, 255, 255);

    /// <summary>A grey of equal channels.</summary>
    public static Colour Grey(byte level) => new(level, level, level);

    /// <summary>As <c>#rrggbb</c>, the form that SVG and CSS read.</summary>
    public string ToHex() => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>The colour mixed with white: 0 gives white, 1 the colour itself. A tint, not transparency, so that every printer and
    /// every reader shows the same.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The share is not within 0 to 1.</exception>
    public Colour Tint(double share)
    {
        if (!(share is >= 0 and <= 1))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share of colour lies within 0 and 1.");
        }

        return new(Mixed(Red, share), Mixed(Green, share), Mixed(Blue, share));
    }

    private static byte Mixed(byte channel, double share) => (byte)Math.Round(255 + (share * (channel - 255)));
}
