using SectionScan.Metrology.Fairing;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Porting.TargetShapes;

/// <summary>One attempt at a target for each factor of size, on the same base.</summary>
internal sealed class TargetAttempt
{
    /// <summary>Cuts shallower than this are no cuts: the own wall stays as it is, mm. The change to a cut is gradual.</summary>
    private const double ShallowestMm = 0.05;

    /// <summary>The fair line may dip into the own wall's texture, which then stays, mm.</summary>
    private const double TextureMm = 0.02;

    /// <summary>A limit of area is met within this share of it.</summary>
    private const double Agreement = 1e-4;

    private readonly TargetShapeOrder order;
    private readonly PeriodicFairing fairing;
    private readonly SectionPoint centroid;

    public TargetAttempt(TargetShapeOrder order)
    {
        this.order = order;
        Base = new(order.Own, order.FairingMm);
        fairing = new(FairBase.Places, Base.SpacingMm, order.FairingMm);
        centroid = PolygonMoments.Of(order.Reference.Points).Centroid;
    }

    public FairBase Base { get; }

    /// <summary>The target's offsets from the base, and the farthest that fairing moved them.</summary>
    public (double FairedMm, TargetOffsets Offsets) At(double scale)
    {
        var reference = Base.OffsetsTo(order.Reference.Mapped(p => new(
            centroid.XMm + (scale * (p.XMm - centroid.XMm)), centroid.YMm + (scale * (p.YMm - centroid.YMm)))));
        var wished = new double[FairBase.Places];
        for (var i = 0; i < wished.Length; i++)
        {
            wished[i] = Base.OwnMm[i] + (order.Shares.At(Base.Directions[i]) * (reference[i] - Base.OwnMm[i]))
                + (order.Widening?.OffsetAt(Base.At(i, 0).YMm, Base.NormalX(i)) ?? 0);
        }

        var offsets = TargetOffsets.Of(Base, wished, order);
        var most = order.Limits.Where(limit => limit.Kind == LimitedMeasure.Area).MinBy(limit => limit.Most);
        var faired = Fair(offsets, 1);
        if (most is not null && TargetLimits.Measured(LimitedMeasure.Area, offsets.Corners(Base)) is var unlimited && unlimited > most.Most)
        {
            var (low, high) = (0.0, 1.0);
            for (var halving = 0; halving < 24 && Math.Abs(TargetLimits.Measured(LimitedMeasure.Area, offsets.Corners(Base)) - most.Most) > Agreement * most.Most; halving++)
            {
                var part = (low + high) / 2;
                faired = Fair(offsets, part);
                (low, high) = TargetLimits.Measured(LimitedMeasure.Area, offsets.Corners(Base)) < most.Most ? (part, high) : (low, part);
            }

            // The last half step may lie just above.
            faired = Fair(offsets, low);
            offsets.HeldByArea(most, unlimited);
        }

        return (faired, offsets);
    }

    /// <summary>Fairs a part of the way from the own wall to what the limits leave of the wish.</summary>
    private double Fair(TargetOffsets offsets, double part)
    {
        var (own, upper) = (Base.OwnMm, offsets.UpperMm);
        var wanted = own.Zip(offsets.WishedMm, (a, wish) => a + (part * (wish - a))).ToArray();
        var lowest = Array.ConvertAll(own, a => a - TextureMm);
        var fair = fairing.Within(wanted, lowest, upper);
        var moved = 0.0;
        for (var i = 0; i < fair.Length; i++)
        {
            var cut = Math.Clamp((wanted[i] - own[i]) / ShallowestMm, 0, 1);
            offsets.TargetMm[i] = own[i] + (cut * cut * (3 - (2 * cut)) * Math.Max(0, fair[i] - own[i]));
            if (wanted[i] < upper[i])
            {
                moved = Math.Max(moved, Math.Abs(offsets.TargetMm[i] - wanted[i]));
            }
        }

        return moved;
    }
}
