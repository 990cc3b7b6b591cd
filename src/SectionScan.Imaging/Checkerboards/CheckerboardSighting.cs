using SectionScan.Metrology.Cameras;

namespace SectionScan.Imaging.Checkerboards;

/// <summary>A chessboard found in a photo.</summary>
/// <param name="Points">Its corners, nominal mm (x to the right and y down as displayed) and refined px as stored.</param>
/// <param name="Columns">Columns of corners between the first and the last seen.</param>
/// <param name="Rows">Rows of corners.</param>
internal sealed record CheckerboardSighting(IReadOnlyList<SightedPoint> Points, int Columns, int Rows);
