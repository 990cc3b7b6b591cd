using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Targets;
using SectionScan.Metrology.Cameras;

namespace SectionScan.Imaging.Digitising;

/// <summary>A photo whose target and camera are known, ready to be measured.</summary>
internal sealed record Scene(
    Photo Photo,
    string Path,
    ScaleTarget Target,
    CameraFit Fit,
    (double X, double Y) Ratio,
    double ThicknessMm,
    DigitiseSettings Settings)
{
    /// <summary>What is only fair about the photo, in sentences.</summary>
    public IReadOnlyList<string> Cautions { get; init; } = [];

    /// <summary>True when openings in a face are measured, false for slices of a mould.</summary>
    public bool IsOpening => Target == ScaleTarget.Card;
}
