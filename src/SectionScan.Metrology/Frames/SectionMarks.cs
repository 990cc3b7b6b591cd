namespace SectionScan.Metrology.Frames;

/// <summary>What a person marked in a section, to lay sections on each other by.</summary>
/// <param name="GuideAxis">The valve guide's axis as it stands in the section, from floor to roof; null when not marked.</param>
/// <param name="FloorLine">The floor's line, from left to right; null when not marked.</param>
/// <param name="Points">Points by name, the same name for the same place of the port in every section.</param>
public sealed record SectionMarks(
    SectionLine? GuideAxis, SectionLine? FloorLine, IReadOnlyDictionary<string, SectionPoint> Points)
{
    /// <summary>Nothing marked.</summary>
    public static SectionMarks None { get; } = new(null, null, new Dictionary<string, SectionPoint>());

    /// <summary>True when nothing is marked.</summary>
    public bool IsEmpty => GuideAxis is null && FloorLine is null && Points.Count == 0;

    /// <summary>The same marks with every point moved as told.</summary>
    public SectionMarks Mapped(Func<SectionPoint, SectionPoint> map)
    {
        ArgumentNullException.ThrowIfNull(map);
        return new(
            GuideAxis is null ? null : new(map(GuideAxis.From), map(GuideAxis.To)),
            FloorLine is null ? null : new(map(FloorLine.From), map(FloorLine.To)),
            Points.ToDictionary(point => point.Key, point => map(point.Value)));
    }
}
