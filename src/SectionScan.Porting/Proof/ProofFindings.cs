namespace SectionScan.Porting.Proof;

/// <summary>Gathers places that fail or stay open into stretches.</summary>
internal static class ProofFindings
{
    /// <summary>The stretches, those that do not conform first, then by how far they are beyond.</summary>
    /// <remarks>A stretch runs over all neighbouring places that do not conform or are undecided on one side of the target: the rim of an
    /// over-cut is part of it.</remarks>
    public static IReadOnlyList<Finding> In(IReadOnlyList<ProvedPlace> places, double spacingMm)
    {
        var count = places.Count;
        var keys = Keys(places);
        var first = Enumerable.Range(0, count).FirstOrDefault(i => keys[i] != keys[(i + count - 1) % count], -1);
        if (first < 0)
        {
            return keys[0] == 0 ? [] : [Of([.. places], spacingMm)];
        }

        var findings = new List<Finding>();
        for (var step = 0; step < count;)
        {
            var key = keys[(first + step) % count];
            var run = new List<ProvedPlace>();
            for (; step < count && keys[(first + step) % count] == key; step++)
            {
                run.Add(places[(first + step) % count]);
            }

            if (key != 0)
            {
                findings.Add(Of(run, spacingMm));
            }
        }

        return [.. findings.OrderByDescending(each => each.Verdict).ThenByDescending(each => each.Worst.BeyondMm)];
    }

    /// <summary>0 conforms; 1 and −1 are beyond a bound outside and inside; 2 is within both, but not surely. A stretch of the last kind
    /// beside one that is beyond is its rim and belongs to it.</summary>
    private static int[] Keys(IReadOnlyList<ProvedPlace> places)
    {
        var keys = places.Select(place => place.Verdict == Verdict.Conforms ? 0
            : place.BeyondMm <= 0 ? 2
            : place.DeviationMm > place.Tolerance.OutsideMm ? 1 : -1).ToArray();
        foreach (var step in new[] { 1, -1 })
        {
            // Twice round, so that the start does not matter.
            for (var k = 0; k < 2 * keys.Length; k++)
            {
                var i = ((k * step % keys.Length) + keys.Length) % keys.Length;
                var before = keys[((i - step) % keys.Length + keys.Length) % keys.Length];
                keys[i] = keys[i] == 2 && Math.Abs(before) == 1 ? before : keys[i];
            }
        }

        return keys;
    }

    private static Finding Of(List<ProvedPlace> run, double spacingMm) => new(
        run.Max(place => place.Verdict), run.MaxBy(place => place.BeyondMm)!,
        run[0].Sample.Direction.Degrees, run[^1].Sample.Direction.Degrees, run.Count * spacingMm);
}
