using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Testing.Accuracy;

/// <summary>Compares uncertainties by draws (JCGM 101:2008) with those by sensitivities (JCGM 100:2008), section by section.</summary>
public sealed class DrawnUncertainty
{
    private readonly List<double> ratios = [];
    private int holding;

    /// <summary>The head line of <see cref="Line"/>.</summary>
    public static string Head => "measure     median    5th    95th   least    most   truth within drawn interval";

    /// <summary>The ratios u by draws over u by sensitivities.</summary>
    public IReadOnlyList<double> Ratios => ratios;

    /// <summary>The share of the drawn 95 % intervals that hold the truth.</summary>
    public double ShareHolding => holding / (double)ratios.Count;

    /// <summary>Adds a section.</summary>
    /// <param name="summary">Its measure by draws.</param>
    /// <param name="standardUncertainty">Its u by sensitivities.</param>
    /// <param name="truth">The true value.</param>
    public void Add(MonteCarloSummary summary, double standardUncertainty, double truth)
    {
        ArgumentNullException.ThrowIfNull(summary);
        ratios.Add(summary.StandardDeviation / standardUncertainty);
        holding += truth >= summary.Low95 && truth <= summary.High95 ? 1 : 0;
    }

    /// <summary>The table's line.</summary>
    public string Line()
    {
        double[] sorted = [.. ratios.Order()];
        double At(double share) => sorted[(int)Math.Round(share * (sorted.Length - 1))];
        return FormattableString.Invariant($"{At(0.5),9:0.00}{At(0.05),8:0.00}{At(0.95),8:0.00}{At(0),8:0.00}{At(1),8:0.00}{100 * ShareHolding,12:0.0} %");
    }
}
