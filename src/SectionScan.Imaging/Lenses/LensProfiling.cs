using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Lenses;

/// <summary>A lens profile and what could not be used for it.</summary>
/// <param name="Profile">The profile.</param>
/// <param name="LeftOut">Why photos were left out.</param>
public sealed record LensProfiling(LensProfile Profile, IReadOnlyList<Problem> LeftOut);
