using MathNet.Numerics.Distributions;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Walls;

/// <summary>The wall that one outline leaves to one keep-out.</summary>
/// <param name="KeepOut">The keep-out.</param>
/// <param name="Stage">Which outline it is.</param>
/// <param name="Least">The thinnest wall in the section plane, and where.</param>
/// <param name="Region">The side of the port that it lies at.</param>
/// <param name="WallMm">The wall with its standard uncertainty, square to the wall when a lean was given, mm.</param>
/// <param name="Budget">Where the uncertainty comes from, mm; assumptions say so.</param>
/// <param name="ChanceUnderLimit">The chance that the wall is thinner than the keep-out's limit, 0 to 1: its error taken as normal with
/// the combined u (JCGM 106:2012, 7.3, cited from memory).</param>
public sealed record RemainingWall(
    KeepOut KeepOut, WallStage Stage, LeastWall Least, OutlineRegion Region, Estimate WallMm, UncertaintyBudget Budget, double ChanceUnderLimit)
{
    /// <summary>A wall whose chance to be under its limit is above this calls for caution.</summary>
    public const double ChanceForCaution = 0.05;

    /// <summary>True when the wall may well be under its limit.</summary>
    public bool NeedsCaution => ChanceUnderLimit > ChanceForCaution;

    /// <summary>Works out the wall.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="stage">Which outline it is.</param>
    /// <param name="keepOut">The keep-out in the same frame.</param>
    /// <param name="present">The port as it is now: a target lies on it, and walls read with a caliper count from it.</param>
    /// <param name="presentSources">What is known of the present outline's error.</param>
    /// <param name="sources">What is known of the outline's own error; not used for a target, which is what it is.</param>
    /// <param name="assumptions">What is assumed.</param>
    public static RemainingWall Of(
        Outline outline,
        WallStage stage,
        KeepOut keepOut,
        Outline present,
        IReadOnlyList<OutlineErrorSource> presentSources,
        IReadOnlyList<OutlineErrorSource> sources,
        WallAssumptions assumptions)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(keepOut);
        ArgumentNullException.ThrowIfNull(assumptions);
        var least = LeastWall.Between(outline, keepOut.Shape);
        var rows = new List<BudgetRow>
        {
            new(keepOut.Source == KeepOutSource.Caliper ? "caliper" : $"place of {keepOut.Name}", keepOut.PlaceStandardUncertaintyMm),
        };

        // A caliper read the present wall itself: where the outline lies does not come into it.
        if (stage != WallStage.Finished && !(stage == WallStage.Present && keepOut.Source == KeepOutSource.Caliper))
        {
            rows.AddRange(Named("present outline", WallUncertainty.At(present, presentSources, least.AtPort)));
        }

        if (stage == WallStage.Finished)
        {
            rows.AddRange(Named("finished outline", WallUncertainty.At(outline, sources, least.AtPort)));
            if (keepOut.Source == KeepOutSource.Caliper)
            {
                rows.AddRange(Named("present outline", WallUncertainty.At(present, presentSources, least.AtPort)));
            }
        }

        if (keepOut.Source == KeepOutSource.Drawing)
        {
            rows.Add(new("core shift (assumed)", WallAssumptions.StandardUncertainty(assumptions.CoreShiftMm)));
        }

        if (stage != WallStage.Present || keepOut.Source == KeepOutSource.Drawing)
        {
            rows.Add(new("registration (assumed)", WallAssumptions.StandardUncertainty(assumptions.RegistrationMm)));
        }

        if (stage == WallStage.Target)
        {
            rows.Add(new("handwork to the template (assumed)", WallAssumptions.StandardUncertainty(assumptions.HandworkMm)));
        }

        var budget = new UncertaintyBudget([.. rows.Select(row => row with { StandardUncertainty = row.StandardUncertainty * assumptions.Cosine })]);
        var wall = new Estimate(least.WallMm * assumptions.Cosine, budget.CombinedStandardUncertainty);
        var centroid = PolygonMoments.Of(outline.Points).Centroid;
        return new(
            keepOut, stage, least, OutlineRegions.In(OutlineRegions.DirectionOf(least.AtPort, centroid)), wall, budget,
            Normal.CDF(wall.Value, wall.StandardUncertainty, keepOut.LimitMm));
    }

    /// <summary>The chance that a wall of this keep-out is under its limit when its best estimate is as given.</summary>
    public double ChanceAt(double wallMm) => Normal.CDF(wallMm, WallMm.StandardUncertainty, KeepOut.LimitMm);

    private static IEnumerable<BudgetRow> Named(string outline, IReadOnlyList<BudgetRow> rows) =>
        rows.Select(row => row with { Source = $"{outline}: {row.Source}" });
}
