using SectionScan.Metrology.Comparison;

namespace SectionScan.Porting.Proof;

/// <summary>How far the finished wall may lie from the target, sector by sector.</summary>
/// <param name="Sectors">The bounds in the order of <see cref="OutlineRegion"/>, eight.</param>
/// <remarks>Profile of a line after ISO 1101 and ISO 1660: the zone lies between two lines that envelop circles centred on the true
/// profile, so that its bounds count along the normal; t is its width. Bounds that are not alike are what ISO 1101 calls an unequally
/// disposed zone (UZ). Both standards are cited from memory.</remarks>
public sealed record ToleranceBand(IReadOnlyList<SectorTolerance> Sectors)
{
    /// <summary>A zone of width t, half of it on each side.</summary>
    public static ToleranceBand Of(double widthMm) => Of(new SectorTolerance(widthMm / 2, widthMm / 2));

    /// <summary>The same bounds everywhere.</summary>
    public static ToleranceBand Of(SectorTolerance everywhere) => new(Enumerable.Repeat(everywhere, 8).ToArray());

    /// <summary>The same with one sector changed.</summary>
    public ToleranceBand With(OutlineRegion region, SectorTolerance tolerance)
    {
        var sectors = Sectors.ToArray();
        sectors[(int)region] = tolerance;
        return new(sectors);
    }

    /// <summary>The bounds in a sector.</summary>
    public SectorTolerance At(OutlineRegion region) => Sectors[(int)region];
}

/// <summary>The bounds of one sector.</summary>
/// <param name="InsideMm">How far inside the target the wall may lie: metal left, mm, zero or more.</param>
/// <param name="OutsideMm">How far outside: metal gone too far, mm, zero or more.</param>
public sealed record SectorTolerance(double InsideMm, double OutsideMm);
