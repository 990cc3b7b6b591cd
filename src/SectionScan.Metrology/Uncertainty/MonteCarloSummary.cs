namespace SectionScan.Metrology.Uncertainty;

/// <summary>What a Monte Carlo propagation of distributions gives, in the measure's unit.</summary>
/// <param name="Mean">The mean of the draws.</param>
/// <param name="StandardDeviation">Their standard deviation: u.</param>
/// <param name="Low95">The lower end of the probabilistically symmetric 95 % interval.</param>
/// <param name="High95">The upper end of it.</param>
/// <param name="Draws">How many draws were made.</param>
public sealed record MonteCarloSummary(double Mean, double StandardDeviation, double Low95, double High95, int Draws);
