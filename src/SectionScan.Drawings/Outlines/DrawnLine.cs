using SectionScan.Metrology.Frames;

namespace SectionScan.Drawings.Outlines;

/// <summary>A line of a drawing as corners, curves already turned into short chords. Drawing units, y up.</summary>
/// <param name="Layer">The layer or group that it stands in; may be empty.</param>
/// <param name="Points">Its corners; of a closed line the first is not repeated.</param>
/// <param name="IsClosed">True when the last corner joins the first.</param>
public sealed record DrawnLine(string Layer, IReadOnlyList<SectionPoint> Points, bool IsClosed);
