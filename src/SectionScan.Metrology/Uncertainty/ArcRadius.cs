using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>The radius of an outline's floor or roof: of the circle through the stretch under (over) the middle 60 % of its width.</summary>
/// <param name="RadiusMm">The radius with its uncertainty, mm.</param>
/// <param name="Centre">The circle's centre, mm.</param>
/// <param name="Arc">The arc of the circle that the stretch covers.</param>
/// <param name="ResidualRmsMm">How far the stretch is from the circle, root mean square, mm.</param>
/// <param name="Budget">The contributions to the radius's uncertainty.</param>
public sealed record ArcRadius(
    Estimate RadiusMm, SectionPoint Centre, Angle Arc, double ResidualRmsMm, UncertaintyBudget Budget)
{
    /// <summary>A radius from a shorter arc is mostly error: 0.03 mm of sagitta is 0.3 mm of a radius of 12 mm over a chord of 10.</summary>
    public static readonly Angle ShortestArc = Angle.FromDegrees(45);

    /// <summary>A stretch that strays farther than this share of its own sagitta from the circle has no one radius.</summary>
    public const double LargestResidualShare = 0.05;

    private const int FewestPoints = 8;

    /// <summary>The radius of the floor.</summary>
    /// <returns>The radius, or <c>arc-too-few-points</c>, <c>arc-too-flat</c>, <c>arc-hollow</c> or <c>arc-not-round</c>.</returns>
    public static Result<ArcRadius> OfFloor(Outline outline, IReadOnlyList<OutlineErrorSource> sources)
    {
        ArgumentNullException.ThrowIfNull(outline);
        return Of(outline, sources, FloorStretch.Indices(outline.Points), "floor", ShortestArc);
    }

    /// <summary>The radius of the roof; as <see cref="OfFloor"/>.</summary>
    public static Result<ArcRadius> OfRoof(Outline outline, IReadOnlyList<OutlineErrorSource> sources)
    {
        ArgumentNullException.ThrowIfNull(outline);
        var upsideDown = Array.ConvertAll(outline.Points.ToArray(), p => new SectionPoint(-p.XMm, -p.YMm));
        return Of(outline, sources, FloorStretch.Indices(upsideDown), "roof", ShortestArc);
    }

    /// <summary>The radius of a stretch of wall that may turn either way, such as the floor of a port cut lengthwise.</summary>
    /// <param name="outline">The outline, mm.</param>
    /// <param name="sources">Its causes of error.</param>
    /// <param name="stretch">Indices of neighbouring corners in the outline's order.</param>
    /// <param name="where">What the wall is called in messages.</param>
    /// <param name="shortestArc">A shorter arc has no radius; <see cref="ShortestArc"/> unless told.</param>
    /// <returns>The radius, its arc negative where the wall bulges into the outline; or as <see cref="OfFloor"/>, but never <c>arc-hollow</c>.</returns>
    public static Result<ArcRadius> OfStretch(
        Outline outline, IReadOnlyList<OutlineErrorSource> sources, int[] stretch, string where, Angle? shortestArc = null)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(stretch);
        return Of(outline, sources, stretch, where, shortestArc ?? ShortestArc, mayBulge: true);
    }

    private static Result<ArcRadius> Of(
        Outline outline, IReadOnlyList<OutlineErrorSource> sources, int[] stretch, string where, Angle shortestArc, bool mayBulge = false)
    {
        ArgumentNullException.ThrowIfNull(sources);
        if (stretch.Length < FewestPoints)
        {
            return ArcProblems.TooFewPoints(where, stretch.Length, FewestPoints);
        }

        var displacement = new OutlineDisplacement(outline);
        if (Fit(displacement, displacement.Corners, stretch) is not { } circle)
        {
            return ArcProblems.TooFlat(where, default);
        }

        var (first, middle, last) = (outline[stretch[0]], outline[stretch[stretch.Length / 2]], outline[stretch[^1]]);
        var arc = Angle.FromRadians(Turn(circle.Centre, first, middle) + Turn(circle.Centre, middle, last));
        if (Math.Abs(arc.Radians) < shortestArc.Radians)
        {
            return ArcProblems.TooFlat(where, arc);
        }

        if (arc.Radians < 0 && !mayBulge)
        {
            return ArcProblems.Hollow(where, circle.RadiusMm);
        }

        var sagitta = circle.RadiusMm * (1 - Math.Cos(arc.Radians / 2));
        if (circle.ResidualRmsMm > LargestResidualShare * sagitta)
        {
            return ArcProblems.NotRound(where, circle.ResidualRmsMm);
        }

        var budget = new UncertaintyBudget([.. sources.Select(source => new BudgetRow(
            source.Name, Math.Sqrt(source.Effects.Sum(effect => Squared(Response(displacement, effect, stretch, circle))))))]);
        return new ArcRadius(
            new(circle.RadiusMm, budget.CombinedStandardUncertainty), circle.Centre, arc, circle.ResidualRmsMm, budget);
    }

    private static double Response(OutlineDisplacement displacement, OutlineEffect effect, int[] stretch, FittedCircle circle)
    {
        if (effect is RandomEdgeEffect noise)
        {
            return RandomUncertainty(displacement, noise, stretch, circle);
        }

        return (Radius(1) - Radius(-1)) / 2;

        double Radius(double factor)
        {
            var moved = displacement.Corners.ToArray();
            displacement.Add(effect, factor, moved);
            return Fit(displacement, moved, stretch)?.RadiusMm ?? circle.RadiusMm;
        }
    }

    /// <summary>u of the radius of a least-squares circle: σ²·L·(∫jjᵀds)⁻¹ with j = (cos φ, sin φ, 1), its last diagonal element. A
    /// residual that is larger than the noise takes the noise's place: the stretch is not quite a circle.</summary>
    private static double RandomUncertainty(OutlineDisplacement displacement, RandomEdgeEffect noise, int[] stretch, FittedCircle circle)
    {
        var information = Matrix<double>.Build.Dense(3, 3);
        foreach (var i in stretch)
        {
            var point = displacement.Corners[i];
            var response = Vector<double>.Build.DenseOfArray(
            [
                (point.XMm - circle.Centre.XMm) / circle.RadiusMm,
                (point.YMm - circle.Centre.YMm) / circle.RadiusMm,
                1,
            ]);
            information += displacement.LengthsMm[i] * response.OuterProduct(response);
        }

        var spread = Math.Max(noise.StandardDeviationMm, circle.ResidualRmsMm);
        return spread * Math.Sqrt(displacement.CorrelationLengthMm(noise) * information.Inverse()[2, 2]);
    }

    private static FittedCircle? Fit(OutlineDisplacement displacement, ReadOnlySpan<SectionPoint> corners, int[] stretch)
    {
        var points = new SectionPoint[stretch.Length];
        for (var k = 0; k < stretch.Length; k++)
        {
            points[k] = corners[stretch[k]];
        }

        return FittedCircle.Taubin(points, Array.ConvertAll(stretch, i => displacement.LengthsMm[i]));
    }

    private static double Turn(SectionPoint centre, SectionPoint from, SectionPoint to)
    {
        var (x0, y0) = (from.XMm - centre.XMm, from.YMm - centre.YMm);
        var (x1, y1) = (to.XMm - centre.XMm, to.YMm - centre.YMm);
        return Math.Atan2((x0 * y1) - (y0 * x1), (x0 * x1) + (y0 * y1));
    }

    private static double Squared(double x) => x * x;
}
