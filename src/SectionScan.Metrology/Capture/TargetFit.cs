namespace SectionScan.Metrology.Capture;

/// <summary>How well the scale target was found.</summary>
/// <param name="Kind">Which target: "sheet", "card".</param>
/// <param name="CornersFound">True saddle points used.</param>
/// <param name="CornersExpected">True saddle points that the target has.</param>
/// <param name="RmsPx">Root mean square of the reprojection errors (both axes together), px.</param>
/// <param name="PrintRatioX">Measured over nominal length of the check bar across.</param>
/// <param name="PrintRatioY">Measured over nominal length of the check bar up.</param>
public sealed record TargetFit(string Kind, int CornersFound, int CornersExpected, double RmsPx, double PrintRatioX, double PrintRatioY);
