namespace SectionScan.Drawings.Plots;

/// <summary>What stands round a plot.</summary>
/// <param name="Title">Its head line.</param>
/// <param name="XLabel">What runs along, with its unit.</param>
/// <param name="YLabel">What runs up, with its unit.</param>
public sealed record PlotFrame(string Title, string XLabel, string YLabel)
{
    /// <summary>Width of the whole drawing, mm.</summary>
    public double WidthMm { get; init; } = 170;

    /// <summary>Height of the whole drawing, mm.</summary>
    public double HeightMm { get; init; } = 92;

    /// <summary>Stretches of the upward axis with a name, such as a usual range; shaded.</summary>
    public IReadOnlyList<PlotBand> Bands { get; init; } = [];

    /// <summary>Places along with a name, such as stations; thin upright lines.</summary>
    public IReadOnlyList<(double X, string Label)> Places { get; init; } = [];

    /// <summary>True when the upward axis begins at zero.</summary>
    public bool IsFromZero { get; init; }
}

/// <summary>A named stretch of the upward axis.</summary>
/// <param name="Label">Its name.</param>
/// <param name="From">Its lower end.</param>
/// <param name="To">Its upper end.</param>
public sealed record PlotBand(string Label, double From, double To);
