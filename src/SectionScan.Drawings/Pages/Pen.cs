namespace SectionScan.Drawings.Pages;

/// <summary>How a line is drawn.</summary>
/// <param name="Colour">Its colour.</param>
/// <param name="WidthMm">Its width, mm, positive.</param>
public sealed record Pen(Colour Colour, double WidthMm)
{
    /// <summary>Lengths of dash and gap in turn, mm; empty for a full line.</summary>
    public IReadOnlyList<double> DashesMm { get; init; } = [];

    /// <summary>True for round ends and corners (lettering, outlines); false for square-cut ends that stop exactly at the end point
    /// and sharp corners.</summary>
    public bool IsRound { get; init; }
}
