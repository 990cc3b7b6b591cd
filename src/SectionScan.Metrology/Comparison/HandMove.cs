using System.Globalization;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Metrology.Comparison;

/// <summary>How a person moved a section by hand after it was laid on another.</summary>
/// <param name="XMm">To the right, mm.</param>
/// <param name="YMm">Up, mm.</param>
/// <param name="TurnDeg">Turned counter-clockwise about the section's own centroid as it was laid, degrees.</param>
public sealed record HandMove(double XMm, double YMm, double TurnDeg)
{
    /// <summary>The farthest that a section can be moved by hand, mm: a port's own size.</summary>
    public const double MostMm = 100;

    /// <summary>Not moved.</summary>
    public static HandMove None { get; } = new(0, 0, 0);

    /// <summary>True when nothing is moved.</summary>
    public bool IsNone => XMm == 0 && YMm == 0 && TurnDeg == 0;

    /// <summary>True when it can be: finite, not farther than <see cref="MostMm"/>, not turned by more than half a turn.</summary>
    public bool IsUsable => Math.Abs(XMm) <= MostMm && Math.Abs(YMm) <= MostMm && Math.Abs(TurnDeg) <= 180;

    /// <summary>Moves a laid outline.</summary>
    public AlignedOutline Apply(AlignedOutline laid)
    {
        ArgumentNullException.ThrowIfNull(laid);
        if (IsNone)
        {
            return laid;
        }

        var centroid = PolygonMoments.Of(laid.Outline.Points).Centroid;
        var about = new SimilarityTransform(0, 0, Angle.FromDegrees(TurnDeg), 1, false);
        var turned = about.Apply(centroid);
        var move = about with { XMm = centroid.XMm - turned.XMm + XMm, YMm = centroid.YMm - turned.YMm + YMm };
        return laid with { Outline = move.Apply(laid.Outline), Transform = laid.Transform.Then(move) };
    }

    /// <summary>"x +0.40 mm, y −0.20 mm, turned +1.50°".</summary>
    public override string ToString() => InWords(isInch: false);

    /// <summary>The same, or "x +0.0157 in, y −0.0079 in, turned +1.50°".</summary>
    /// <param name="isInch">True for inches.</param>
    public string InWords(bool isInch) => isInch
        ? string.Create(CultureInfo.InvariantCulture, $"x {XMm / Inch.Mm:+0.0000;−0.0000;0.0000} in, y {YMm / Inch.Mm:+0.0000;−0.0000;0.0000} in, turned {TurnDeg:+0.00;−0.00;0.00}°")
        : string.Create(CultureInfo.InvariantCulture, $"x {XMm:+0.00#;−0.00#;0.00} mm, y {YMm:+0.00#;−0.00#;0.00} mm, turned {TurnDeg:+0.00;−0.00;0.00}°");
}
