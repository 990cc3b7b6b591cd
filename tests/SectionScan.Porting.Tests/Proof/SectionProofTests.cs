using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Proof;
using SectionScan.Testing.Shapes;

namespace SectionScan.Porting.Tests.Proof;

public class SectionProofTests
{
    private static readonly Outline Target = AnalyticShapes.Superellipse(18, 15, 2.5, 720);
    private static readonly OutlineErrorSource[] Edge = [new("edge", [new NormalOffsetEffect(0.02), new RandomEdgeEffect(0.01, 0.2)])];

    [Fact]
    public void A_wall_within_the_zone_conforms_and_has_no_findings()
    {
        var proof = Prove(Target.Moved(0.1, -0.1), ToleranceBand.Of(0.5));

        Assert.Equal(Verdict.Conforms, proof.Verdict);
        Assert.Empty(proof.Findings);
        Assert.InRange(proof.ProfileMm, 0, 0.02);
    }

    [Fact]
    public void A_bite_is_found_where_it_is_and_as_deep_as_it_is()
    {
        var proof = Prove(Bitten(0.5), ToleranceBand.Of(0.5));

        Assert.Equal(Verdict.DoesNotConform, proof.Verdict);
        var finding = Assert.Single(proof.Findings);
        Assert.True(finding.IsTooFar);
        Assert.Equal(0.5, finding.Worst.DeviationMm, 0.03);
        Assert.Equal(-20, finding.Worst.Sample.Direction.Degrees, 4.0);
        Assert.Equal(OutlineRegion.Right, finding.Worst.Sample.Region);
        Assert.InRange(finding.LengthMm, 4, 12);

        // ISO 1101: twice the largest deviation is the least even zone that holds the profile.
        Assert.Equal(2 * finding.Worst.DeviationMm, proof.ProfileMm, 1e-9);
    }

    [Fact]
    public void A_bite_as_deep_as_the_bound_is_undecided() =>
        Assert.Equal(Verdict.Undecided, Prove(Bitten(0.25), ToleranceBand.Of(0.5)).Verdict);

    [Fact]
    public void Each_sector_has_its_own_bounds()
    {
        var wide = ToleranceBand.Of(0.3).With(OutlineRegion.Right, new(0.1, 0.8)).With(OutlineRegion.FloorRightCorner, new(0.1, 0.8));

        Assert.Equal(Verdict.Conforms, Prove(Bitten(0.5), wide).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Prove(Bitten(0.5), ToleranceBand.Of(0.3)).Verdict);
    }

    [Fact]
    public void Metal_left_is_told_from_metal_gone()
    {
        var proof = Prove(Bitten(-0.5), ToleranceBand.Of(0.5));

        Assert.False(Assert.Single(proof.Findings).IsTooFar);
    }

    // An unequally disposed zone: what is left everywhere by 0.3 mm is allowed, what is gone is not.
    [Fact]
    public void A_port_that_is_smaller_all_round_conforms_to_a_zone_that_lies_inside()
    {
        var smaller = Outline.From(Target.ToPolygon().Buffer(-0.3, 32).Coordinates.Select(c => new SectionPoint(c.X, c.Y))).ValueOrThrow();

        Assert.Equal(Verdict.Conforms, Prove(smaller, ToleranceBand.Of(new SectorTolerance(0.5, 0.1))).Verdict);
        Assert.Equal(Verdict.DoesNotConform, Prove(smaller, ToleranceBand.Of(0.4)).Verdict);
    }

    // u = √(0.02² + 0.01²·0.2/2): the shared part in full, the random one as a mean over 2 mm.
    [Fact]
    public void Shared_and_random_errors_are_kept_apart()
    {
        var place = Prove(Target, ToleranceBand.Of(0.5)).Places[0];

        Assert.Equal(0.02, place.SharedMm, 5e-4);
        Assert.Equal(0.01 * Math.Sqrt(0.1), place.RandomMm, 1e-6);
        Assert.Equal(Math.Sqrt((0.02 * 0.02) + (1e-4 * 0.1)), place.StandardUncertaintyMm, 5e-4);
    }

    /// <summary>Out by a depth toward −20°, dying away over about 8 mm.</summary>
    private static Outline Bitten(double depthMm) => Target.Mapped(p =>
    {
        var away = Math.IEEERemainder(Math.Atan2(p.YMm, p.XMm) - double.DegreesToRadians(-20), 2 * Math.PI) / 0.25;
        var size = Math.Sqrt((p.XMm * p.XMm) + (p.YMm * p.YMm));
        var factor = 1 + (depthMm / size * Math.Exp(-away * away));
        return new(p.XMm * factor, p.YMm * factor);
    });

    private static SectionProof Prove(Outline finished, ToleranceBand band)
    {
        var terms = new ProofTerms(band, new(DecisionRule.UsualGuardFactor), AlignmentChoice.Usual);
        var laid = SectionAlignment.Align((Target, SectionMarks.None), (finished, SectionMarks.None), terms.Alignment).ValueOrThrow();
        return SectionProof.Of((Target, []), laid, (finished, Edge), terms);
    }
}
