using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Lengthwise;

/// <summary>A port cut lengthwise: its floor and its roof from the manifold face to the valve seat.</summary>
/// <param name="Name">What to call it.</param>
/// <param name="Outline">The outline it came from at even spacing, mm, y toward the roof.</param>
/// <param name="ErrorSources">Independent causes of error; empty when nothing is known.</param>
/// <param name="Floor">From the face to the seat, mm.</param>
/// <param name="Roof">From the face to the seat, mm.</param>
/// <param name="Face">The end at the manifold.</param>
/// <param name="Seat">The end at the valve.</param>
/// <param name="FloorStretch">The outline's corners that make the floor, clear of the ends, in the outline's order.</param>
/// <param name="RoofStretch">The same for the roof.</param>
/// <param name="Centreline">The medial axis from face to seat, with the height square to it.</param>
public sealed record LengthwiseShape(
    string Name,
    Outline Outline,
    IReadOnlyList<OutlineErrorSource> ErrorSources,
    Profile Floor,
    Profile Roof,
    CutEnd Face,
    CutEnd Seat,
    IReadOnlyList<int> FloorStretch,
    IReadOnlyList<int> RoofStretch,
    IReadOnlyList<MedialPlace> Centreline)
{
    /// <summary>The centreline's length, mm.</summary>
    public double LengthMm => Centreline[^1].DistanceMm;

    /// <summary>The radius of the floor's turn, the short-side radius: of the circle through the stretch where the floor turns from a tenth
    /// to nine tenths of its whole turn.</summary>
    public Result<ArcRadius> FloorRadius => WallTurn.Of(Outline, ErrorSources, FloorStretch, "floor");

    /// <summary>The radius of the roof's turn.</summary>
    public Result<ArcRadius> RoofRadius => WallTurn.Of(Outline, ErrorSources, RoofStretch, "roof");

    /// <summary>The floor's radius place by place, over windows of 10 mm, in the outline's order.</summary>
    public IReadOnlyList<LocalRadius> FloorRadii => WallTurn.Along(Outline, ErrorSources, FloorStretch);

    /// <summary>The roof's radius place by place.</summary>
    public IReadOnlyList<LocalRadius> RoofRadii => WallTurn.Along(Outline, ErrorSources, RoofStretch);

    /// <summary>The place of the centreline at a distance from the face.</summary>
    public MedialPlace At(double distanceMm)
    {
        var i = Enumerable.Range(1, Centreline.Count - 1).FirstOrDefault(k => Centreline[k].DistanceMm >= distanceMm, Centreline.Count - 1);
        var (from, to) = (Centreline[i - 1], Centreline[i]);
        var share = (distanceMm - from.DistanceMm) / (to.DistanceMm - from.DistanceMm);
        return new(
            distanceMm,
            new(from.Place.XMm + (share * (to.Place.XMm - from.Place.XMm)), from.Place.YMm + (share * (to.Place.YMm - from.Place.YMm))),
            from.HeightMm + (share * (to.HeightMm - from.HeightMm)));
    }
}
