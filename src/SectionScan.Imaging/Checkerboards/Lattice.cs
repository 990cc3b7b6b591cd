using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>Corners of a chessboard with their places in its lattice.</summary>
/// <param name="Points">Column and row, counted from any corner, and where it is seen, px.</param>
/// <param name="Contradictions">How often a candidate lay at a place that it cannot have: taken already, or of the wrong colour.</param>
internal sealed record Lattice(IReadOnlyDictionary<(int Column, int Row), PixelPoint> Points, int Contradictions);
