namespace SectionScan.Drawings.Pages;

/// <summary>A sheet of paper as a printer takes it.</summary>
/// <param name="Name">The size's name in lower case: "a4".</param>
/// <param name="WidthMm">Width, mm.</param>
/// <param name="HeightMm">Height, mm.</param>
/// <remarks>A sizes after ISO 216; Letter is 8.5 by 11 inches (ANSI/ASME Y14.1, size A).</remarks>
public sealed record PaperSize(string Name, double WidthMm, double HeightMm)
{
    /// <summary>210 × 297 mm, upright.</summary>
    public static PaperSize A4 { get; } = new("a4", 210, 297);

    /// <summary>297 × 420 mm, upright.</summary>
    public static PaperSize A3 { get; } = new("a3", 297, 420);

    /// <summary>8.5 × 11 inches, upright.</summary>
    public static PaperSize Letter { get; } = new("letter", 215.9, 279.4);

    /// <summary>Every size there is, for messages and choices.</summary>
    public static IReadOnlyList<PaperSize> All { get; } = [A4, A3, Letter];

    /// <summary>The same paper on its side: the longer edge across.</summary>
    public PaperSize Landscape => WidthMm >= HeightMm ? this : new(Name, HeightMm, WidthMm);

    /// <summary>The size of that name, upper or lower case, or null.</summary>
    public static PaperSize? FromName(string name) => All.FirstOrDefault(size => size.Name.Equals(name, StringComparison.OrdinalIgnoreCase));
}
