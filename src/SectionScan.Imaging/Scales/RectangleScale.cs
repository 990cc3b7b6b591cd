using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Scales;

/// <summary>Four corners of a rectangle of known size, such as a sheet of paper, in the plane that is measured.</summary>
/// <param name="Corners">Top left, top right, bottom right, bottom left, px as displayed.</param>
/// <param name="WidthMm">Its width (top left to top right), mm.</param>
/// <param name="HeightMm">Its height (top left to bottom left), mm.</param>
public sealed record RectangleScale(IReadOnlyList<PixelPoint> Corners, double WidthMm, double HeightMm) : ScaleSource;
