using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.TargetShapes;

/// <summary>What stands beside a target shape's drawing.</summary>
/// <param name="Title">The head line.</param>
/// <param name="OwnName">The own section's name.</param>
/// <param name="ReferenceName">The reference's name.</param>
public sealed record TargetShapeCaption(string Title, string OwnName, string ReferenceName)
{
    /// <summary>Sentences below the head line.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Stretches that a limit held back: the limit in words, and from which direction counter-clockwise to which, degrees.</summary>
    public IReadOnlyList<(string Limit, double FromDeg, double ToDeg)> Held { get; init; } = [];

    /// <summary>The unit shown.</summary>
    public LengthUnit Unit { get; init; }
}
