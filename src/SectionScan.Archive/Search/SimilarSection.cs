using SectionScan.Archive.Entries;
using SectionScan.Metrology.Likeness;

namespace SectionScan.Archive.Search;

/// <summary>An entry found by its shape.</summary>
/// <param name="Entry">The entry.</param>
/// <param name="Likeness">How near its shape is, and how it was laid on.</param>
public sealed record SimilarSection(EntrySummary Entry, ShapeLikeness Likeness);
