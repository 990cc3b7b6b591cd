using SectionScan.Imaging.Grounds;
using SectionScan.Imaging.Photos;
using SectionScan.Imaging.Scales;

namespace SectionScan.Imaging.Digitising;

/// <summary>A photo whose scale is known, ready to be measured.</summary>
/// <param name="Photo">The photo.</param>
/// <param name="Path">Its file, for messages.</param>
/// <param name="Scale">Its camera.</param>
/// <param name="IsOpening">True when openings in a face are measured, false for slices of a mould.</param>
/// <param name="ThicknessMm">Height of the faces above the scale's plane, mm.</param>
/// <param name="Settings">How.</param>
/// <param name="Cautions">What is only fair about the photo, in sentences.</param>
/// <param name="Paper">The bare, lit paper where it is known.</param>
internal sealed record Scene(
    Photo Photo, string Path, ImageScale Scale, bool IsOpening, double ThicknessMm, DigitiseSettings Settings, IReadOnlyList<string> Cautions,
    GroundModel? Paper = null);
