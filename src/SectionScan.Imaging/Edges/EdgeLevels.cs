namespace SectionScan.Imaging.Edges;

/// <summary>The levels on the way across an edge, in the signal's own measure.</summary>
/// <param name="Face">The face's.</param>
/// <param name="Ground">The ground's where it begins.</param>
/// <param name="Slope">How it changes, per mm.</param>
/// <param name="Wall">The wall's where it shows, else 0.</param>
internal readonly record struct EdgeLevels(double Face, double Ground, double Slope, double Wall);
