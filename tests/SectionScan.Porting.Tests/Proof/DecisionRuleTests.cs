using SectionScan.Porting.Proof;

namespace SectionScan.Porting.Tests.Proof;

/// <summary>Limit 0.25, u 0.03 (field guide, section 4, after ISO 14253-1 and JCGM 106): with g = 2u pass to 0.19 and fail from 0.31; with
/// one-sided 95 % pass to 0.200654 and fail from 0.299346.</summary>
public class DecisionRuleTests
{
    [Theory]
    [InlineData(2, 0.1899, Verdict.Conforms)]
    [InlineData(2, 0.1901, Verdict.Undecided)]
    [InlineData(2, 0.3099, Verdict.Undecided)]
    [InlineData(2, 0.3101, Verdict.DoesNotConform)]
    [InlineData(2, -0.3101, Verdict.DoesNotConform)]
    [InlineData(DecisionRule.UsualGuardFactor, 0.200653, Verdict.Conforms)]
    [InlineData(DecisionRule.UsualGuardFactor, 0.200655, Verdict.Undecided)]
    [InlineData(DecisionRule.UsualGuardFactor, -0.299345, Verdict.Undecided)]
    [InlineData(DecisionRule.UsualGuardFactor, -0.299347, Verdict.DoesNotConform)]
    public void The_guard_band_parts_what_is_proved_from_what_is_not(double guard, double value, Verdict verdict) =>
        Assert.Equal(verdict, new DecisionRule(guard).Judge(value, 0.03, -0.25, 0.25));

    [Fact]
    public void A_zone_narrower_than_the_guard_bands_proves_nothing_within() =>
        Assert.Equal(Verdict.Undecided, new DecisionRule(2).Judge(0, 0.03, -0.05, 0.05));
}
