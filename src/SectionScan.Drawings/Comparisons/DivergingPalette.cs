using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Comparisons;

/// <summary>Colours from blue over light grey to orange for a signed value. People who confuse red and green tell the two apart, and
/// both get darker away from zero, so that the size reads in black and white.</summary>
/// <remarks>Straight lines in Oklab (B. Ottosson, "A perceptual color space for image processing", 2020; matrices cited from
/// memory), in which equal steps look about equal.</remarks>
public static class DivergingPalette
{
    private static readonly (double L, double A, double B) Blue = (0.44, -0.020, -0.125);
    private static readonly (double L, double A, double B) Middle = (0.93, 0, 0);
    private static readonly (double L, double A, double B) Orange = (0.60, 0.075, 0.122);

    /// <summary>The colour of a share of the greatest deviation.</summary>
    /// <param name="share">−1 (blue, inside) to 1 (orange, outside); beyond is taken as the end.</param>
    /// <exception cref="ArgumentOutOfRangeException">Not a number.</exception>
    public static Colour At(double share)
    {
        if (double.IsNaN(share))
        {
            throw new ArgumentOutOfRangeException(nameof(share), share, "A share must be a number.");
        }

        var end = share < 0 ? Blue : Orange;
        var t = Math.Min(1, Math.Abs(share));
        return FromOklab(
            Middle.L + (t * (end.L - Middle.L)),
            Middle.A + (t * (end.A - Middle.A)),
            Middle.B + (t * (end.B - Middle.B)));
    }

    private static Colour FromOklab(double lightness, double a, double b)
    {
        var l = Math.Pow(lightness + (0.3963377774 * a) + (0.2158037573 * b), 3);
        var m = Math.Pow(lightness - (0.1055613458 * a) - (0.0638541728 * b), 3);
        var s = Math.Pow(lightness - (0.0894841775 * a) - (1.2914855480 * b), 3);
        return new(
            Encoded((4.0767416621 * l) - (3.3077115913 * m) + (0.2309699292 * s)),
            Encoded((-1.2684380046 * l) + (2.6097574011 * m) - (0.3413193965 * s)),
            Encoded((-0.0041960863 * l) - (0.7034186147 * m) + (1.7076147010 * s)));
    }

    // The transfer function of sRGB (IEC 61966-2-1).
    private static byte Encoded(double linear)
    {
        var value = Math.Clamp(linear, 0, 1);
        var encoded = value <= 0.0031308 ? 12.92 * value : (1.055 * Math.Pow(value, 1 / 2.4)) - 0.055;
        return (byte)Math.Round(255 * encoded);
    }
}
