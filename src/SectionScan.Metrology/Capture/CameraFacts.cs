using SectionScan.Metrology.Cameras;

namespace SectionScan.Metrology.Capture;

/// <summary>The camera that a photo was measured with.</summary>
/// <param name="Source">Where the lens comes from: "profile" or "self-calibrated".</param>
/// <param name="FocalPx">Focal length in px.</param>
/// <param name="HeightMm">Height above the paper, mm.</param>
/// <param name="HeightStandardUncertaintyMm">u of the height, mm.</param>
/// <param name="TiltDeg">Angle between optical axis and the paper's normal, degrees.</param>
/// <param name="Lens">The lens used.</param>
/// <param name="Pose">The pose found.</param>
public sealed record CameraFacts(string Source, double FocalPx, double HeightMm, double HeightStandardUncertaintyMm, double TiltDeg, Lens Lens, Pose Pose);
