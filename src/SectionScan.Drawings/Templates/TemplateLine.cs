using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Templates;

/// <summary>One line of a template, in the section frame (y up), mm.</summary>
/// <param name="Layer">One of <see cref="TemplateLayers"/>.</param>
/// <param name="Points">Its corners; the first is not repeated at the end of a closed line.</param>
/// <param name="IsClosed">True for every line that is cut.</param>
public sealed record TemplateLine(string Layer, IReadOnlyList<SectionPoint> Points, bool IsClosed);
