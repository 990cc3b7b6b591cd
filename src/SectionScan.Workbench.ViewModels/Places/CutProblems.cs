using SectionScan.Metrology.Results;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>What can be wrong with what a person types at Cut and Prove.</summary>
public static class CutProblems
{
    /// <summary>A length that makes no sense there.</summary>
    public static Problem OutOfRange(string what, double leastMm, double mostMm) => new(
        "length-out-of-range", FormattableString.Invariant($"The {what} lies from {leastMm:0.#} to {mostMm:0.#} mm."), what, "Give a length within that range.");
}
