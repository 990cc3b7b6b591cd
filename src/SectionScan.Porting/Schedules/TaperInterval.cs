using SectionScan.Metrology.Quantities;

namespace SectionScan.Porting.Schedules;

/// <summary>How the area changes from one station to the next.</summary>
/// <param name="From">The station before.</param>
/// <param name="To">The station after, with the flow.</param>
public sealed record TaperInterval(ScheduleStation From, ScheduleStation To)
{
    private const double ReferenceLengthMm = 10;

    /// <summary>Length between the two, mm.</summary>
    public double LengthMm => To.Position.DistanceMm - From.Position.DistanceMm;

    /// <summary>Change of area, mm²; positive where the port widens with the flow.</summary>
    public Estimate AreaChangeMm2 => new(
        To.AreaMm2.Value - From.AreaMm2.Value,
        Math.Sqrt(StationCombination.Rows([From, To], [-1, 1]).Sum(row => row.StandardUncertainty * row.StandardUncertainty)));

    /// <summary>Change of area in percent of the mean of both, for 10 mm of length.</summary>
    /// <remarks>Its uncertainty counts the areas' and the distances' of both stations.</remarks>
    public Estimate PercentPer10Mm
    {
        get
        {
            var mean = (From.AreaMm2.Value + To.AreaMm2.Value) / 2;
            var factor = 100 * ReferenceLengthMm / (mean * LengthMm);
            var percent = AreaChangeMm2.Value * factor;
            var length = double.Hypot(From.Position.DistanceStandardUncertaintyMm, To.Position.DistanceStandardUncertaintyMm) / LengthMm;
            return new(percent, double.Hypot(AreaChangeMm2.StandardUncertainty * factor, percent * length));
        }
    }

    /// <summary>Whole angle of the cone that would widen as fast, from diameters of equal area; negative where the port narrows.</summary>
    public Angle ConeAngle
    {
        get
        {
            var (first, second) = (Math.Sqrt(From.AreaMm2.Value / Math.PI), Math.Sqrt(To.AreaMm2.Value / Math.PI));
            return Angle.FromRadians(2 * Math.Atan((second - first) / LengthMm));
        }
    }
}
