using System.Globalization;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Judgements;

namespace SectionScan.Porting.Schedules;

/// <summary>The volume from the sections against the volume that a burette filled: a check from outside, for it knows neither stations
/// nor scale.</summary>
/// <param name="FromSections">The volume from the sections.</param>
/// <param name="BuretteMm3">The volume filled, mm³.</param>
public sealed record BuretteCheck(PortVolume FromSections, Estimate BuretteMm3)
{
    /// <summary>The volume from the sections less the burette's, mm³.</summary>
    public Estimate DifferenceMm3 => new(
        FromSections.VolumeMm3.Value - BuretteMm3.Value,
        double.Hypot(FromSections.VolumeMm3.StandardUncertainty, BuretteMm3.StandardUncertainty));

    /// <summary>The difference over its expanded uncertainty: within ±1 the two agree (E_n of ISO/IEC 17043, from memory).</summary>
    public double NormalisedError => DifferenceMm3.Value / DifferenceMm3.ExpandedUncertainty;

    /// <summary>True when the two agree within their uncertainties (k = 2).</summary>
    public bool Agrees => Math.Abs(NormalisedError) <= 1;

    /// <summary>What all distances along the centreline would have to be multiplied by, were they alone at fault.</summary>
    public double DistanceFactor => BuretteMm3.Value / FromSections.VolumeMm3.Value;

    /// <summary>What all widths and heights would have to be multiplied by, were the sections' scale alone at fault.</summary>
    public double SectionScaleFactor => Math.Sqrt(DistanceFactor);

    /// <summary>The check in plain words.</summary>
    public Judgement Judge()
    {
        var finding = new Wording(unit => $"The sections give {unit.Volume(FromSections.VolumeMm3)}, the burette {unit.Volume(BuretteMm3)} (k = 2).");
        return Agrees
            ? new("burette-agrees", JudgementLevel.Usual, finding, "The two agree: stations and scale hold together.", Basis)
            : new(
                "burette-disagrees", JudgementLevel.Outside, finding,
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"They differ by more than both are uncertain, so stations or scale must be wrong: all distances by {100 * (DistanceFactor - 1):+0.0;−0.0} %, or all widths and heights by {100 * (SectionScaleFactor - 1):+0.0;−0.0} %, or one station misplaced or missing. Measure the distances and the print's check bars again, and see that the burette filled the same stretch from face to seat."),
                Basis);
    }

    private const string Basis = "E_n number of ISO/IEC 17043 (from memory); filling a port as a check of its sections: common practice, no source";
}
