namespace SectionScan.Drawings.Plots;

/// <summary>One course of a plot. Series are told apart by dashes and marks, so that a copy in black and white loses nothing.</summary>
/// <param name="Name">Its name in the legend.</param>
/// <param name="Line">The course; may be empty.</param>
/// <param name="Marks">What was measured; may be empty.</param>
public sealed record PlotSeries(string Name, IReadOnlyList<PlotPoint> Line, IReadOnlyList<PlotPoint> Marks);
