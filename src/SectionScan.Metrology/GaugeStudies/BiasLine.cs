namespace SectionScan.Metrology.GaugeStudies;

/// <summary>Bias and linearity: a plug of mean width L reads too wide by 2·e + s·L.</summary>
/// <param name="EdgeMm">e: how far outward the edge is read, mm.</param>
/// <param name="EdgeStandardUncertaintyMm">Standard uncertainty of e.</param>
/// <param name="Scale">s: relative error of the scale.</param>
/// <param name="ScaleStandardUncertainty">Standard uncertainty of s.</param>
/// <remarks>Weighted least squares over the plugs' means, with what was known of the scale beforehand as one more observation: few plugs of
/// similar size cannot tell edge from scale, a calliper on the check bars can. Source: AIAG, Measurement Systems Analysis, 4th ed. (2010),
/// chapter III section B, "linearity"; weights of known variances: NIST/SEMATECH e-Handbook, section 4.4.5.2 (both from memory).</remarks>
public sealed record BiasLine(double EdgeMm, double EdgeStandardUncertaintyMm, double Scale, double ScaleStandardUncertainty)
{
    /// <summary>Fits the line.</summary>
    /// <param name="points">One for each plug: L, the mean excess and its standard uncertainty, all in mm; two or more different L.</param>
    /// <param name="knownScale">Relative standard uncertainty of the scale as known without the plugs, about zero; infinite when not known.</param>
    public static BiasLine Through(IReadOnlyList<(double LengthMm, double ExcessMm, double StandardUncertaintyMm)> points, double knownScale)
    {
        ArgumentNullException.ThrowIfNull(points);
        var known = 1 / (knownScale * knownScale);
        var weights = points.Select(p => 1 / (p.StandardUncertaintyMm * p.StandardUncertaintyMm)).ToArray();
        var sum = weights.Sum();
        var mean = points.Zip(weights, (p, w) => w * p.LengthMm).Sum() / sum;
        var spread = points.Zip(weights, (p, w) => w * (p.LengthMm - mean) * (p.LengthMm - mean)).Sum() + known;
        var middle = points.Zip(weights, (p, w) => w * p.ExcessMm).Sum() / sum;
        var slope = points.Zip(weights, (p, w) => w * (p.LengthMm - mean) * p.ExcessMm).Sum() / spread;

        // Plugs that stray from the line by more than their own uncertainties widen it (Birge's ratio).
        var misfit = (known * slope * slope)
            + points.Zip(weights, (p, w) => w * Math.Pow(p.ExcessMm - middle - (slope * (p.LengthMm - mean)), 2)).Sum();
        var freedom = points.Count - (known > 0 ? 1 : 2);
        var widening = freedom > 0 ? Math.Max(1, Math.Sqrt(misfit / freedom)) : 1;
        var (uMiddle, uSlope) = (widening / Math.Sqrt(sum), widening / Math.Sqrt(spread));
        return new(
            (middle - (slope * mean)) / 2, Math.Sqrt((uMiddle * uMiddle) + (mean * mean * uSlope * uSlope)) / 2, slope, uSlope);
    }
}
