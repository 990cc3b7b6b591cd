namespace SectionScan.Metrology.Likeness;

/// <summary>The few nearest of many, as they come by; of equally near ones those with the lower number stay.</summary>
internal sealed class NearestRows(int count, Func<int, long> idOf)
{
    private readonly SortedSet<(double SquaredMm2, long Id, int Row)> kept = [];
    private readonly Dictionary<int, double> byRow = [];

    /// <summary>Nothing farther than this can get in.</summary>
    public double LimitMm2 => kept.Count < count ? double.PositiveInfinity : kept.Max.SquaredMm2;

    public IEnumerable<int> Rows => kept.Select(each => each.Row);

    public void Offer(int row, double squaredMm2)
    {
        if (byRow.TryGetValue(row, out var before))
        {
            if (before <= squaredMm2)
            {
                return;
            }

            kept.Remove((before, idOf(row), row));
        }

        kept.Add((squaredMm2, idOf(row), row));
        byRow[row] = squaredMm2;
        if (kept.Count > count)
        {
            byRow.Remove(kept.Max.Row);
            kept.Remove(kept.Max);
        }
    }
}
