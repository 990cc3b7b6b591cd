using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.GaugeStudies;

/// <summary>A thing of known size, photographed to learn how well this camera, sheet and person measure.</summary>
/// <param name="Name">What it is called in the study.</param>
/// <param name="Shape">Its outline.</param>
/// <param name="WidthMm">Diameter, side or longer side, mm; more than zero.</param>
/// <param name="HeightMm">Shorter side, mm; the width again for a circle or a square; at most the width.</param>
/// <param name="StandardUncertaintyMm">Standard uncertainty of its sizes, from its certificate or the micrometer; mm.</param>
public sealed record Plug(string Name, PlugShape Shape, double WidthMm, double HeightMm, double StandardUncertaintyMm)
{
    /// <summary>True for a square or a rectangle.</summary>
    public bool HasCorners => Shape is PlugShape.Square or PlugShape.Rectangle;

    /// <summary>The area enclosed, mm².</summary>
    public double AreaMm2 => Shape switch
    {
        PlugShape.Circle => Math.PI * WidthMm * WidthMm / 4,
        PlugShape.Stadium => (Math.PI * HeightMm * HeightMm / 4) + ((WidthMm - HeightMm) * HeightMm),
        _ => WidthMm * HeightMm,
    };

    /// <summary>The length of the outline, mm.</summary>
    public double PerimeterMm => Shape switch
    {
        PlugShape.Circle => Math.PI * WidthMm,
        PlugShape.Stadium => (Math.PI * HeightMm) + (2 * (WidthMm - HeightMm)),
        _ => 2 * (WidthMm + HeightMm),
    };

    /// <summary>The length that a relative error of scale acts on in <see cref="ExcessMm"/>: 4·A/P, the diameter or the side.</summary>
    public double MeanWidthMm => 4 * AreaMm2 / PerimeterMm;

    /// <summary>How much too wide a measured area is, all round: 2·(A − A₀)/P₀. An outline that is off by e everywhere gives 2·e, one
    /// whose scale is off by s gives s·4·A₀/P₀; how the plug is turned does not matter.</summary>
    /// <param name="measuredMm2">The area measured.</param>
    public double ExcessMm(double measuredMm2) => 2 * (measuredMm2 - AreaMm2) / PerimeterMm;

    /// <summary>Compares a measured outline with the plug. Sharp corners are not part of it: no camera shows them sharp, and a gauge block
    /// is measured between its sides; a square or a rectangle counts by the middles of its sides.</summary>
    /// <param name="outline">The outline, turned anyhow.</param>
    public PlugSighting Compare(Outline outline)
    {
        ArgumentNullException.ThrowIfNull(outline);
        if (HasCorners)
        {
            var sides = RectangleSides.Of(outline);
            return new(sides.LongerMm, sides.ShorterMm, sides.RoughnessMm, ExcessMm(sides.LongerMm * sides.ShorterMm));
        }

        var feret = FeretDiameters.Of(outline.Points);
        return new(feret.MaxMm, feret.MinMm, 0, ExcessMm(PolygonMoments.Of(outline.Points).AreaMm2));
    }
}
