namespace SectionScan.Porting.Proof;

/// <summary>The decision rule of ISO 14253-1: a value conforms when it lies within the bound by a guard band g, does not conform when it
/// lies beyond by g, and in between nothing is proved.</summary>
/// <param name="GuardFactor">g over the standard uncertainty u.</param>
/// <remarks>The default of the 2017 edition is a conformance probability of 95 % at one bound, g = 1.6449 u; the older edition took the
/// expanded uncertainty, g = 2 u (both cited from memory; worked values in the tests).</remarks>
public sealed record DecisionRule(double GuardFactor)
{
    /// <summary>The 95 % quantile of the normal distribution: the usual rule.</summary>
    public const double UsualGuardFactor = 1.6448536269514722;

    /// <summary>Judges a value against two bounds.</summary>
    /// <param name="value">The value measured.</param>
    /// <param name="standardUncertainty">Its u.</param>
    /// <param name="least">The lower bound.</param>
    /// <param name="most">The upper bound.</param>
    public Verdict Judge(double value, double standardUncertainty, double least, double most)
    {
        var guard = GuardFactor * standardUncertainty;
        return value > most + guard || value < least - guard ? Verdict.DoesNotConform
            : value <= most - guard && value >= least + guard ? Verdict.Conforms
            : Verdict.Undecided;
    }
}
