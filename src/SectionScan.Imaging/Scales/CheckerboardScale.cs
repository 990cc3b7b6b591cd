namespace SectionScan.Imaging.Scales;

/// <summary>A plain checkerboard in the plane that the things lie on.</summary>
/// <param name="SquareMm">Side of a square, mm; positive.</param>
/// <param name="PosePhoto">A photo of the board by the same camera, which was not moved since; null when the board is in the photo itself.</param>
public sealed record CheckerboardScale(double SquareMm, string? PosePhoto = null) : ScaleSource;
