using SectionScan.Metrology.Frames;

namespace SectionScan.Metrology.Cameras;

/// <summary>A point of the target whose place on the paper is known and that was found in the photo.</summary>
/// <param name="Target">Its place on the paper, mm, the print's own ratios already applied.</param>
/// <param name="Pixel">Where it was found, px.</param>
public readonly record struct SightedPoint(TargetPoint Target, PixelPoint Pixel);
