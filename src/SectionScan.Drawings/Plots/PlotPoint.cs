namespace SectionScan.Drawings.Plots;

/// <summary>A point of a plot, in the axes' own units.</summary>
/// <param name="X">Along.</param>
/// <param name="Y">Up.</param>
/// <param name="ExpandedUncertainty">U of the value, drawn as a bar or a band; zero for none.</param>
public readonly record struct PlotPoint(double X, double Y, double ExpandedUncertainty = 0);
