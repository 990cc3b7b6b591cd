using System.Globalization;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Proof;

namespace SectionScan.Jobs.Proving;

/// <summary>Proofs in plain words.</summary>
public static class ProofWords
{
    /// <summary>"conforms", "undecided", "does not conform".</summary>
    public static string Of(Verdict verdict) => verdict switch
    {
        Verdict.Conforms => "conforms",
        Verdict.Undecided => "undecided",
        _ => "does not conform",
    };

    /// <summary>"cut too far at the right wall (−12°): +0.41 mm ± 0.05 mm, allowed +0.10 mm; over 14 mm of wall".</summary>
    public static string Of(Finding finding, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(finding);
        var worst = finding.Worst;
        var what = worst.BeyondMm <= 0 ? "cannot be told" : (finding.Verdict, finding.IsTooFar) switch
        {
            (Verdict.DoesNotConform, true) => "cut too far",
            (Verdict.DoesNotConform, false) => "metal left",
            (_, true) => "perhaps cut too far",
            _ => "perhaps metal left",
        };
        var bound = worst.BeyondMm <= 0 ? $"{Signed(-worst.Tolerance.InsideMm)} to {Signed(worst.Tolerance.OutsideMm)}"
            : Signed(finding.IsTooFar ? worst.Tolerance.OutsideMm : -worst.Tolerance.InsideMm);
        var direction = worst.Sample.Direction.Degrees.ToString("0", CultureInfo.InvariantCulture).Replace('-', '−');
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{what} at the {RegionWords.Of(worst.Sample.Region)} ({direction}°): {MeasureText.Deviation(worst.DeviationMm, unit)} ± {MeasureText.Length(new(Estimate.CoverageFactor * worst.StandardUncertaintyMm, 0), unit)}, allowed {bound}, over {MeasureText.Length(new(finding.LengthMm, 0), unit)} of wall");

        string Signed(double lengthMm) => MeasureText.Deviation(lengthMm, unit);
    }
}
