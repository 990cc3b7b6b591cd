using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Walls;

/// <summary>What is assumed about walls where nothing was measured. Each is a half-width: as likely anywhere within ± of it, so that its
/// standard uncertainty is the half-width over √3 (JCGM 100:2008, 4.3.7).</summary>
/// <param name="CoreShiftMm">How far the cores of this casting may have lain from where a drawing says, mm.</param>
/// <param name="RegistrationMm">How well one section's frame is laid on another's, or on the drawing's, mm.</param>
/// <param name="HandworkMm">How well a hand follows the template, mm.</param>
/// <param name="LeanDeg">How far the wall leans to the section plane, degrees: the true wall is thinner by its cosine.</param>
public sealed record WallAssumptions(double CoreShiftMm, double RegistrationMm, double HandworkMm, double LeanDeg = 0)
{
    /// <summary>Half a millimetre of core shift and 0.3 mm of registration, from memory (unverified); a quarter of a millimetre of handwork,
    /// the gap under a template that shops work to (common practice, no source).</summary>
    public static WallAssumptions Usual { get; } = new(0.5, 0.3, 0.25);

    /// <summary>The cosine of the lean.</summary>
    public double Cosine => Math.Cos(Angle.FromDegrees(LeanDeg).Radians);

    /// <summary>The standard uncertainty of a half-width.</summary>
    public static double StandardUncertainty(double halfWidth) => halfWidth / Math.Sqrt(3);
}
