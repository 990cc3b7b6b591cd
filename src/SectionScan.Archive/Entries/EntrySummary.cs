namespace SectionScan.Archive.Entries;

/// <summary>An entry in short, for lists.</summary>
/// <param name="Id">Its number in this library; never used again for another.</param>
/// <param name="Place">Where the section belongs.</param>
/// <param name="RevisionNumber">How often it was written.</param>
/// <param name="IsRemoved">True when it is marked as removed.</param>
/// <param name="AddedAt">When it came in.</param>
/// <param name="ChangedAt">When it was last written.</param>
/// <param name="AreaMm2">Area of the outline, mm².</param>
/// <param name="WidthMm">Extent of the outline along x, mm.</param>
/// <param name="HeightMm">Extent of the outline along y, mm.</param>
/// <param name="PhotoSha256">SHA-256 of the photo that it came from, or null.</param>
/// <param name="Notes">Its notes.</param>
/// <param name="Tags">Its tags.</param>
/// <param name="Fields">Its numbers.</param>
public sealed record EntrySummary(
    long Id,
    SectionPlace Place,
    int RevisionNumber,
    bool IsRemoved,
    DateTimeOffset AddedAt,
    DateTimeOffset ChangedAt,
    double AreaMm2,
    double WidthMm,
    double HeightMm,
    string? PhotoSha256,
    string Notes,
    IReadOnlyList<string> Tags,
    IReadOnlyList<NumericField> Fields);
