using System.Text.Json.Serialization;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>How an outline moves under one cause of error, at one standard uncertainty.</summary>
[JsonPolymorphic(TypeDiscriminatorPropertyName = "kind")]
[JsonDerivedType(typeof(LinearEffect), "linear")]
[JsonDerivedType(typeof(NormalOffsetEffect), "normalOffset")]
[JsonDerivedType(typeof(FacingOffsetEffect), "facingOffset")]
[JsonDerivedType(typeof(LocalOffsetEffect), "localOffset")]
[JsonDerivedType(typeof(RandomEdgeEffect), "randomEdge")]
public abstract record OutlineEffect;

/// <summary>Every point p (mm, from the centroid) moves by M·p: scale, stretch, shear.</summary>
/// <param name="XX">Relative stretch along x.</param>
/// <param name="XY">Move along x per mm of y.</param>
/// <param name="YX">Move along y per mm of x.</param>
/// <param name="YY">Relative stretch along y.</param>
public sealed record LinearEffect(double XX, double XY, double YX, double YY) : OutlineEffect
{
    /// <summary>The same relative scale in every direction.</summary>
    public static LinearEffect Scale(double relative) => new(relative, 0, 0, relative);
}

/// <summary>Every point moves along the outward normal by the same length: all points of one outline share the edge's bias.</summary>
/// <param name="OffsetMm">The move in mm, outward positive.</param>
public sealed record NormalOffsetEffect(double OffsetMm) : OutlineEffect;

/// <summary>Points move along the outward normal n by the offset times max(0, n·d): the side that faces the direction d, as a
/// leaning or hidden wall does.</summary>
/// <param name="OffsetMm">The move in mm where the outline faces d squarely.</param>
/// <param name="DirectionX">x of the unit vector d, section frame.</param>
/// <param name="DirectionY">y of the unit vector d, section frame.</param>
public sealed record FacingOffsetEffect(double OffsetMm, double DirectionX, double DirectionY) : OutlineEffect;

/// <summary>Points near one place move along the outward normal together, dying away toward the end of the stretch: an edge that could not
/// be told well there. At distance d from the place the move is the offset times 1 − (d/radius)⁴, and none beyond the radius.</summary>
/// <param name="OffsetMm">The move in mm in the middle of the stretch.</param>
/// <param name="XMm">x of the place, mm, section frame.</param>
/// <param name="YMm">y of the place, mm, section frame.</param>
/// <param name="RadiusMm">How far the stretch reaches from the place, mm.</param>
public sealed record LocalOffsetEffect(double OffsetMm, double XMm, double YMm, double RadiusMm) : OutlineEffect;

/// <summary>Points move along the normal at random, alike only over a short length: pixel noise, saw marks, texture.</summary>
/// <param name="StandardDeviationMm">The spread of the move in mm.</param>
/// <param name="CorrelationLengthMm">The length of outline over which the moves are alike, mm: the integral of the
/// autocorrelation over all lags.</param>
public sealed record RandomEdgeEffect(double StandardDeviationMm, double CorrelationLengthMm) : OutlineEffect;
