using SectionScan.Metrology.Capture;

namespace SectionScan.Imaging.Checks;

/// <summary>What a look at a photo found, before anything in it is measured.</summary>
/// <param name="Photo">The photo.</param>
/// <param name="Target">The target's fit, or null when none can be used.</param>
/// <param name="Camera">The camera, or null when the target cannot be used.</param>
/// <param name="Items">The respects it was looked at, each with its verdict; the target first.</param>
public sealed record PhotoReport(PhotoFacts Photo, TargetFit? Target, CameraFacts? Camera, IReadOnlyList<CheckItem> Items)
{
    /// <summary>The worst of the verdicts: poor means that <c>digitise</c> refuses the photo.</summary>
    public CheckVerdict Verdict => Items.Count == 0 ? CheckVerdict.Good : Items.Max(i => i.Verdict);
}
