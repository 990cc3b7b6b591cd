namespace SectionScan.Metrology.Quantities;

/// <summary>A measured value with its standard uncertainty (coverage factor k = 1), after JCGM 100:2008. The unit is told by the
/// member that holds it (<c>AreaMm2</c>, <c>WidthMm</c>).</summary>
/// <param name="Value">The best estimate of the measurand.</param>
/// <param name="StandardUncertainty">u, in the value's unit; zero or more.</param>
public readonly record struct Estimate(double Value, double StandardUncertainty)
{
    /// <summary>The coverage factor of <see cref="ExpandedUncertainty"/>: about 95 % for a nearly normal error.</summary>
    public const double CoverageFactor = 2;

    /// <summary>U = k·u with k = 2, in the value's unit.</summary>
    public double ExpandedUncertainty => CoverageFactor * StandardUncertainty;

    /// <summary>The same quantity in a unit that is <paramref name="factor"/> times as many, such as 1/25.4 for mm to inch.</summary>
    public Estimate Scaled(double factor) => new(Value * factor, StandardUncertainty * Math.Abs(factor));
}
