using System.Globalization;

namespace SectionScan.Drawings.Plots;

/// <summary>An axis with round ticks.</summary>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Step">From tick to tick.</param>
internal sealed record PlotAxis(double From, double To, double Step)
{
    private const int TicksWanted = 6;

    /// <summary>An axis that holds all values, its ends at ticks when <paramref name="isRounded"/>.</summary>
    public static PlotAxis Of(double least, double most, bool isRounded)
    {
        if (!(most > least))
        {
            (least, most) = (least - Math.Max(1, Math.Abs(least) * 0.05), most + Math.Max(1, Math.Abs(most) * 0.05));
        }

        var rough = (most - least) / TicksWanted;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = new[] { 1.0, 2, 2.5, 5, 10 }.Select(each => each * power).First(each => each >= rough * 0.999);
        return isRounded
            ? new(Math.Floor(least / step) * step, Math.Ceiling(most / step) * step, step)
            : new(least, most, step);
    }

    /// <summary>The ticks with their labels.</summary>
    public IEnumerable<(double Value, string Label)> Ticks()
    {
        var decimals = Math.Clamp((int)Math.Ceiling(-Math.Log10(Step) + (IsHalfStep ? 1 : 0) - 1e-9), 0, 8);
        for (var i = (long)Math.Ceiling((From / Step) - 1e-6); i * Step <= To + (Step * 1e-6); i++)
        {
            yield return (i * Step, ((i * Step) + 0.0).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture).Replace('-', '−'));
        }
    }

    /// <summary>Where a value lies, 0 at the beginning and 1 at the end.</summary>
    public double Share(double value) => (value - From) / (To - From);

    private bool IsHalfStep => Math.Abs((Step / Math.Pow(10, Math.Floor(Math.Log10(Step)))) - 2.5) < 1e-6;
}
