using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Digitising;

/// <summary>All that a photo gave.</summary>
/// <param name="Photo">The photo; its file name and size even when it failed later.</param>
/// <param name="Target">The target's fit.</param>
/// <param name="Camera">The camera.</param>
/// <param name="Sections">The sections, by station, then from left to right.</param>
/// <param name="Warnings">What the person should know about the photo as a whole.</param>
/// <param name="Refused">Objects that were seen but cannot be measured, and why.</param>
/// <param name="AnnotatedJpeg">The photo with the outlines over it, as a JPEG file's bytes, when it was asked for.</param>
public sealed record DigitisedPhoto(
    PhotoFacts Photo,
    TargetFit Target,
    CameraFacts Camera,
    IReadOnlyList<DigitisedSection> Sections,
    IReadOnlyList<string> Warnings,
    IReadOnlyList<Problem> Refused,
    byte[]? AnnotatedJpeg);
