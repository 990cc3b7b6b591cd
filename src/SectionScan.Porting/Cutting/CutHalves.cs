namespace SectionScan.Porting.Cutting;

/// <summary>The left and the right half of a cut, seen with the flow, divided by the upright line through the target's centroid.</summary>
/// <param name="LeftMm2">Metal to remove in all on the left, mm².</param>
/// <param name="RightMm2">Metal to remove in all on the right, mm².</param>
/// <param name="PresentAsymmetryMm">How far the present outline lies from its own mirror image at most, mm.</param>
/// <param name="TargetAsymmetryMm">How far the target lies from its own mirror image at most, mm.</param>
public sealed record CutHalves(double LeftMm2, double RightMm2, double PresentAsymmetryMm, double TargetAsymmetryMm)
{
    /// <summary>A target nearer to its mirror image than this counts as symmetric, mm: what shops act on (common practice, no source).</summary>
    public const double SymmetricWithinMm = 0.25;

    /// <summary>True when both halves of the target are meant to be alike.</summary>
    public bool IsTargetSymmetric => TargetAsymmetryMm <= SymmetricWithinMm;
}
