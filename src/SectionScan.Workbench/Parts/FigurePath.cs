using System.Globalization;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Workbench.Parts;

/// <summary>Sections as paths of a figure whose unit is a millimetre: SVG's y points down, a section's up.</summary>
internal static class FigurePath
{
    /// <summary>A closed outline.</summary>
    public static string Of(Outline outline) => $"M{Points(outline.Points.ToArray())}Z";

    /// <summary>The corners of a path, without its first letter.</summary>
    public static string Points(IEnumerable<SectionPoint> points) => string.Join(' ', points.Select(p => $"{Number(p.XMm)},{Number(-p.YMm)}"));

    /// <summary>A length to a hundredth of a millimetre, never "-0".</summary>
    public static string Number(double mm) => (Math.Round(mm, 2) + 0.0).ToString("0.##", CultureInfo.InvariantCulture);
}
