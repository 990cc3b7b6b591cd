using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>All measures of an outline with their uncertainties.</summary>
/// <param name="Quantities">The measured quantities, in the order they were asked for.</param>
public sealed record MeasuredOutline(IReadOnlyList<MeasuredQuantity> Quantities)
{
    /// <summary>The quantity of a measure, by its name.</summary>
    /// <exception cref="ArgumentException">The measure was not asked for.</exception>
    public MeasuredQuantity this[Measure measure]
    {
        get
        {
            ArgumentNullException.ThrowIfNull(measure);
            return Quantities.FirstOrDefault(quantity => quantity.Measure.Name == measure.Name)
                ?? throw new ArgumentException($"The measure {measure.Name} was not taken.", nameof(measure));
        }
    }

    /// <summary>Takes every measure of <see cref="MeasureCatalogue.All"/>.</summary>
    public static MeasuredOutline Of(Outline outline, IReadOnlyList<OutlineErrorSource> sources) =>
        Of(outline, sources, MeasureCatalogue.All);

    /// <summary>Takes the measures asked for.</summary>
    public static MeasuredOutline Of(Outline outline, IReadOnlyList<OutlineErrorSource> sources, IReadOnlyList<Measure> measures)
    {
        var budgets = OutlineUncertainty.Of(outline, sources, measures);
        var facts = PolygonFacts.Of(outline);
        return new([.. measures.Zip(budgets, (measure, budget) =>
            new MeasuredQuantity(measure, new(measure.Definition(facts), budget.CombinedStandardUncertainty), budget))]);
    }
}
