using SectionScan.Metrology.Cameras;

namespace SectionScan.Imaging.Scales;

/// <summary>One cause of error of a scale, as cameras one standard uncertainty away from the best.</summary>
/// <param name="Name">The cause, as it stands in budgets.</param>
/// <param name="Cameras">Independent deviations: what they change adds up in squares.</param>
/// <param name="IsAssumed">True when it does not follow from the photo.</param>
internal sealed record ScaleDeviation(string Name, IReadOnlyList<Camera> Cameras, bool IsAssumed = false);
