namespace SectionScan.Porting.Cutting;

/// <summary>Metal along the port from the metal of its stations.</summary>
public static class CutVolume
{
    /// <summary>The volume between stations at even steps, mm³: from station to station the mean of both areas.</summary>
    /// <param name="areasMm2">The metal of each station in order, mm².</param>
    /// <param name="stepMm">The distance from station to station, mm.</param>
    /// <returns>The volume between the first station and the last; zero for one station.</returns>
    /// <remarks>The trapezoidal rule; what lies before the first station and after the last is not counted.</remarks>
    public static double Between(IReadOnlyList<double> areasMm2, double stepMm)
    {
        ArgumentNullException.ThrowIfNull(areasMm2);
        return Enumerable.Range(1, Math.Max(0, areasMm2.Count - 1)).Sum(i => (areasMm2[i - 1] + areasMm2[i]) / 2 * stepMm);
    }
}
