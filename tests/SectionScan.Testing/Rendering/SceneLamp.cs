namespace SectionScan.Testing.Rendering;

/// <summary>A lamp over the target.</summary>
/// <param name="XMm">Its place, target frame.</param>
/// <param name="YMm">Its place, target frame.</param>
/// <param name="HeightMm">Its height above the target; a near lamp gives a strong gradient.</param>
/// <param name="RadiusMm">The radius of its disc: up to 10 gives hard shadows, above that soft ones.</param>
/// <param name="Light">What it brings to a surface that faces it at the distance of the target's centre.</param>
public sealed record SceneLamp(double XMm, double YMm, double HeightMm, double RadiusMm, LinearColour Light);
