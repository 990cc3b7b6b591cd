using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.TargetShapes;

/// <summary>The offsets of one attempt from the base: what was wished, what limits allow, what the target became.</summary>
internal sealed class TargetOffsets
{
    /// <summary>Held back by less than this is not held back, mm.</summary>
    private const double NoticeableMm = 0.005;

    private readonly List<(string Kind, double Bound, string Unit, string Note, double Wanted, double[] UpperMm)> held = [];
    private readonly double[] beforeOwnMm;

    private TargetOffsets(double[] beforeOwn, double[] wished)
    {
        (beforeOwnMm, WishedMm) = (beforeOwn, wished);
        (UpperMm, TargetMm) = (Enumerable.Repeat(double.PositiveInfinity, wished.Length).ToArray(), new double[wished.Length]);
    }

    public double[] WishedMm { get; }

    public double[] UpperMm { get; }

    public double[] TargetMm { get; }

    /// <summary>Bounds what is wished: by the own metal first, then by the limits.</summary>
    public static TargetOffsets Of(FairBase line, double[] wished, TargetShapeOrder order)
    {
        var offsets = new TargetOffsets(wished, [.. wished.Zip(line.OwnMm, Math.Max)]);
        foreach (var limit in order.Limits.Where(limit => limit.Kind != LimitedMeasure.Area))
        {
            var kind = limit.Kind == LimitedMeasure.Width ? "width" : "height";
            var wanted = TargetLimits.Measured(limit.Kind, line.At(offsets.WishedMm));
            offsets.held.Add((kind, limit.Most, "mm", limit.Note, wanted, TargetLimits.OfExtent(line, offsets.WishedMm, limit)));
        }

        foreach (var clearance in order.Clearances)
        {
            var wanted = line.At(offsets.WishedMm).Min(clearance.Shape.DistanceMm);
            var note = clearance.Note.Length == 0 ? clearance.Name : $"{clearance.Name}: {clearance.Note}";
            offsets.held.Add(("keep-out", clearance.LeastMm, "mm", note, wanted, TargetLimits.OfClearance(line, offsets.WishedMm, clearance)));
        }

        foreach (var limit in order.Limits.Where(limit => limit.Kind == LimitedMeasure.Area))
        {
            offsets.held.Add(("area", limit.Most, "mm²", limit.Note, double.NaN, []));
        }

        foreach (var (_, _, _, _, _, upper) in offsets.held.Where(each => each.UpperMm.Length > 0))
        {
            for (var i = 0; i < upper.Length; i++)
            {
                // No limit puts metal back.
                offsets.UpperMm[i] = Math.Min(offsets.UpperMm[i], Math.Max(upper[i], line.OwnMm[i]));
            }
        }

        return offsets;
    }

    /// <summary>The target's corners.</summary>
    public SectionPoint[] Corners(FairBase line) => line.At(TargetMm);

    /// <summary>Notes that a limit of area drew every cut back.</summary>
    public void HeldByArea(ShapeLimit limit, double wantedMm2)
    {
        var at = held.FindIndex(each => each.Kind == "area" && each.Bound == limit.Most);
        // Only what the area took: what other limits hold back is theirs.
        held[at] = held[at] with { Wanted = wantedMm2, UpperMm = [.. TargetMm.Select((target, i) => target + Math.Max(0, WishedMm[i] - UpperMm[i]))] };
    }

    /// <summary>Every limit with the stretches where it held the target back; the own metal last, if it did.</summary>
    public IReadOnlyList<TargetLimit> Reports(FairBase line)
    {
        var area = TargetLimits.Measured(LimitedMeasure.Area, Corners(line));
        var reports = held.Select(each => new TargetLimit(
            each.Kind, each.Bound, each.Unit, each.Note, double.IsNaN(each.Wanted) ? area : each.Wanted,
            each.UpperMm.Length == 0 ? [] : Stretches(line, i => WishedMm[i] - Math.Max(each.UpperMm[i], line.OwnMm[i])))).ToList();
        var own = Stretches(line, i => line.OwnMm[i] - beforeOwnMm[i]);
        if (own.Count > 0)
        {
            reports.Add(new("own metal", 0, "mm", "metal cannot be put back", -own.Max(each => each.HeldBackMm), own));
        }

        return reports;
    }

    private static List<ActiveStretch> Stretches(FairBase line, Func<int, double> heldBackMm)
    {
        var count = FairBase.Places;
        var back = Enumerable.Range(0, count).Select(heldBackMm).ToArray();
        var first = Array.FindIndex(back, each => each <= NoticeableMm);
        if (first < 0)
        {
            return [new(-180, 180, "all round", back.Max())];
        }

        var stretches = new List<ActiveStretch>();
        for (var step = 1; step <= count; step++)
        {
            var from = step;
            while (step <= count && back[(first + step) % count] > NoticeableMm)
            {
                step++;
            }

            if (step > from)
            {
                var run = Enumerable.Range(first + from, step - from).Select(i => i % count).ToArray();
                var sectors = run.Select(i => OutlineRegions.In(line.Directions[i])).Distinct().Select(RegionWords.Of);
                stretches.Add(new(
                    Math.Round(line.Directions[run[0]].Degrees, 1), Math.Round(line.Directions[run[^1]].Degrees, 1), string.Join(", ", sectors), run.Max(i => back[i])));
            }
        }

        return stretches;
    }
}
