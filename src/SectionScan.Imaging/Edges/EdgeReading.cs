namespace SectionScan.Imaging.Edges;

/// <summary>One subpixel reading of a face's edge.</summary>
/// <param name="OffsetMm">Where the edge lies along the outward normal, from the curve it was looked for on.</param>
/// <param name="StandardUncertaintyMm">How well it could be read there, from what the model left over and the step it was read
/// from.</param>
/// <param name="Contrast">The step that it was read from, in the signal's own measure.</param>
internal readonly record struct EdgeReading(double OffsetMm, double StandardUncertaintyMm, double Contrast)
{
    /// <summary>The two readings weighed by their uncertainties.</summary>
    public EdgeReading With(EdgeReading other)
    {
        var (a, b) = (1 / (StandardUncertaintyMm * StandardUncertaintyMm), 1 / (other.StandardUncertaintyMm * other.StandardUncertaintyMm));
        return new(((a * OffsetMm) + (b * other.OffsetMm)) / (a + b), Math.Sqrt(1 / (a + b)), Math.Max(Contrast, other.Contrast));
    }
}
