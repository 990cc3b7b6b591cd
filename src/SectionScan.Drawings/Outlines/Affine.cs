using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Outlines;

/// <summary>x' = A·x + C·y + E, y' = B·x + D·y + F: the six numbers of an SVG matrix in their order.</summary>
internal readonly record struct Affine(double A, double B, double C, double D, double E, double F)
{
    public static Affine None => new(1, 0, 0, 1, 0, 0);

    public SectionPoint Apply(SectionPoint p) => new((A * p.XMm) + (C * p.YMm) + E, (B * p.XMm) + (D * p.YMm) + F);

    /// <summary>This one after <paramref name="first"/>.</summary>
    public Affine After(Affine first) => new(
        (A * first.A) + (C * first.B), (B * first.A) + (D * first.B),
        (A * first.C) + (C * first.D), (B * first.C) + (D * first.D),
        (A * first.E) + (C * first.F) + E, (B * first.E) + (D * first.F) + F);

    /// <summary>How much it enlarges lengths, at the most.</summary>
    public double Enlargement => Math.Max(Math.Sqrt((A * A) + (B * B)), Math.Sqrt((C * C) + (D * D)));
}
