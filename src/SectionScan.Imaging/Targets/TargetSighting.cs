using SectionScan.Metrology.Cameras;

namespace SectionScan.Imaging.Targets;

/// <summary>A scale target found in a photo.</summary>
/// <param name="Target">Which one.</param>
/// <param name="Points">Its true saddle points, nominal mm and refined px.</param>
internal sealed record TargetSighting(ScaleTarget Target, IReadOnlyList<SightedPoint> Points);
