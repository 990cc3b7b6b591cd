namespace SectionScan.Imaging.Scales;

/// <summary>A scan by a flatbed scanner: its resolution is the scale.</summary>
/// <param name="DotsPerInch">The resolution, or null to take it from the file.</param>
public sealed record ScanScale(double? DotsPerInch = null) : ScaleSource;
