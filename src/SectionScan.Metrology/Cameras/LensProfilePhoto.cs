namespace SectionScan.Metrology.Cameras;

/// <summary>One photo that a lens profile was made from.</summary>
/// <param name="File">Its name.</param>
/// <param name="Corners">Corners used.</param>
/// <param name="RmsPx">Root mean square of its reprojection errors, px.</param>
/// <param name="TiltDeg">Angle between optical axis and the target's normal, degrees.</param>
public sealed record LensProfilePhoto(string File, int Corners, double RmsPx, double TiltDeg);
