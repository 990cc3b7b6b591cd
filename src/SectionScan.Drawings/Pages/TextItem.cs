using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Pages;

/// <summary>One line of text in the project's own single-stroke lettering.</summary>
/// <param name="Position">Where the anchor stands, on the baseline.</param>
/// <param name="Text">The text, without line breaks.</param>
/// <param name="CapHeightMm">Height of a capital letter, mm.</param>
/// <param name="Colour">The colour.</param>
public sealed record TextItem(PagePoint Position, string Text, double CapHeightMm, Colour Colour) : PageItem
{
    /// <summary>Which part of the text stands at the position.</summary>
    public TextAnchor Anchor { get; init; }

    /// <summary>A turn about the position, counter-clockwise as seen by the reader.</summary>
    public Angle Turn { get; init; }

    /// <summary>True for a wider pen, as for a title.</summary>
    public bool IsBold { get; init; }

    /// <inheritdoc/>
    public override PageItem Placed(PagePoint origin, double scale) =>
        this with { Position = Position.Placed(origin, scale), CapHeightMm = CapHeightMm * scale };
}
