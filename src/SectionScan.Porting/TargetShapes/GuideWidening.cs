namespace SectionScan.Porting.TargetShapes;

/// <summary>Both side walls moved out beside the guide, to win back what its boss blocks.</summary>
/// <param name="TotalMm">How much wider in all, mm; half on each side. About 2 mm is usual (common practice, no source).</param>
/// <param name="AtYMm">The height at which it is widest, section frame, mm.</param>
/// <param name="ReachMm">How far up and down from there it dies away, mm.</param>
public sealed record GuideWidening(double TotalMm, double AtYMm, double ReachMm)
{
    /// <summary>The usual reach, mm: about the size of a guide's boss. Common practice, no source.</summary>
    public const double UsualReachMm = 12;

    /// <summary>How far a wall moves out at a place whose outward normal has this x and that height: a cosine's bump, and only side
    /// walls.</summary>
    internal double OffsetAt(double yMm, double normalX)
    {
        var away = Math.Abs(yMm - AtYMm) / ReachMm;
        return away >= 1 ? 0 : TotalMm / 2 * Math.Pow(Math.Cos(away * Math.PI / 2), 2) * normalX * normalX;
    }
}
