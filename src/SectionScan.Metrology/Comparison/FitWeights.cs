namespace SectionScan.Metrology.Comparison;

/// <summary>Losses of distances and the weights that lead to their least.</summary>
/// <remarks>Iteratively reweighted least squares: P. Holland, R. Welsch, "Robust regression using iteratively reweighted least-squares",
/// Communications in Statistics A6, 1977, with their tuning constants for 95 % efficiency on normal errors, 1.345 (Huber) and 4.685
/// (biweight); P. Huber, "Robust Statistics", 1981 (both cited from memory).</remarks>
internal sealed class FitWeights(FitLoss loss)
{
    private const double HuberTuning = 1.345;
    private const double TukeyTuning = 4.685;

    /// <summary>The median absolute deviation of normal errors times this is their standard deviation.</summary>
    private const double NormalConsistency = 1.4826;

    /// <summary>No edge is measured better than this, mm: two outlines that agree exactly leave no spread to judge by.</summary>
    private const double SmallestScaleMm = 0.005;

    /// <summary>Absolute distances below this count as squares, mm, so that their weights stay finite.</summary>
    private const double RoundingMm = 0.002;

    /// <summary>True when no weights change: absolute distances and squares, whose losses have no scale.</summary>
    public bool IsClassical => loss is FitLoss.LeastSquares or FitLoss.Absolute;

    /// <summary>The middle value.</summary>
    public static double Median(double[] values)
    {
        var sorted = values.Order().ToArray();
        var middle = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    /// <summary>The spread of residuals about zero, as the standard deviation of normal errors with the same median size, mm.</summary>
    public static double ScaleOf(double[] residuals) =>
        Math.Max(SmallestScaleMm, NormalConsistency * Median(Array.ConvertAll(residuals, Math.Abs)));

    /// <summary>The mean loss.</summary>
    /// <param name="residuals">Distances less the even offset, mm.</param>
    /// <param name="scaleMm">Their honest spread, mm.</param>
    public double Loss(double[] residuals, double scaleMm) => residuals.Average(r => loss switch
    {
        FitLoss.LeastSquares => r * r,
        FitLoss.Absolute => Math.Sqrt((r * r) + (RoundingMm * RoundingMm)),
        FitLoss.Huber => Math.Abs(r) <= HuberTuning * scaleMm ? r * r / 2 : HuberTuning * scaleMm * (Math.Abs(r) - (HuberTuning * scaleMm / 2)),
        _ => 1 - Math.Pow(Math.Max(0, 1 - Squared(r / (TukeyTuning * scaleMm))), 3),
    });

    /// <summary>Each residual's weight in the next least squares step.</summary>
    public double[] Of(double[] residuals, double scaleMm) => Array.ConvertAll(residuals, r => loss switch
    {
        FitLoss.LeastSquares => 1,
        FitLoss.Absolute => RoundingMm / Math.Sqrt((r * r) + (RoundingMm * RoundingMm)),
        FitLoss.Huber => Math.Min(1, HuberTuning * scaleMm / Math.Max(Math.Abs(r), 1e-12)),
        _ => Squared(Math.Max(0, 1 - Squared(r / (TukeyTuning * scaleMm)))),
    });

    private static double Squared(double value) => value * value;
}
