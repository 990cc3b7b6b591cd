using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Metrology.Comparison;

/// <summary>How well each deviation round a reference is known: the part that all places of a stretch share, and the part that averages out
/// along it.</summary>
/// <remarks>
/// Each cause of error moves the wall by so much along its normal at each place (JCGM 100:2008, 5.1.3). A best fit then moves the whole
/// outline after it, and takes out what it can: with J the fit's directions at the places and d the moves, what is left of d is
/// d − J·(JᵀJ)⁻¹Jᵀd, without the even offset's part, which the fit knows but does not take out. Causes of both sections count as
/// independent.
/// </remarks>
public static class DeviationUncertainty
{
    /// <summary>Directions that change distances by less than this share of the strongest are not fitted: a circle's turn.</summary>
    private const double WeakestDirection = 1e-7;

    /// <summary>The standard uncertainties of the deviations.</summary>
    /// <param name="samples">The deviations, in order round the reference.</param>
    /// <param name="section">One of the two sections where it lies now, and its causes of error in its own frame.</param>
    /// <param name="alignment">How the two were laid on each other.</param>
    /// <param name="overMm">The length over which deviations are averaged, mm.</param>
    /// <returns>For each sample u of the shared part and u of the random part after averaging, mm.</returns>
    public static IReadOnlyList<(double SharedMm, double RandomMm)> Of(
        IReadOnlyList<DeviationSample> samples, ErrorBearer section, AlignmentChoice alignment, double overMm)
    {
        ArgumentNullException.ThrowIfNull(samples);
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(alignment);
        var outline = section.OwnFrame;
        var displacement = new OutlineDisplacement(outline);
        var corners = Corners(samples, section);
        var fit = Fit(samples, alignment);
        var (shared, random) = (new double[samples.Count], 0.0);
        foreach (var effect in section.ErrorSources.SelectMany(source => source.Effects))
        {
            if (effect is RandomEdgeEffect noise)
            {
                random += noise.StandardDeviationMm * noise.StandardDeviationMm * Math.Min(1, displacement.CorrelationLengthMm(noise) / overMm);
                continue;
            }

            var along = WallUncertainty.Along(outline, displacement, effect);
            var moves = Vector<double>.Build.DenseOfEnumerable(corners.Select(corner => along[corner]));
            var left = fit is { } f ? moves - (f.Motions * (f.Solver * moves).SubVector(0, f.Motions.ColumnCount)) : moves;
            for (var i = 0; i < shared.Length; i++)
            {
                shared[i] += left[i] * left[i];
            }
        }

        return [.. shared.Select(square => (Math.Sqrt(square), Math.Sqrt(random)))];
    }

    /// <summary>The corner of the section, in its own frame's order, that is nearest to where each deviation was taken.</summary>
    private static int[] Corners(IReadOnlyList<DeviationSample> samples, ErrorBearer section)
    {
        var laid = section.Laid;
        var index = new EdgeIndex(laid.Points, isClosed: true);
        return [.. samples.Select(sample =>
        {
            var place = section.IsReference ? sample.Reference : sample.Measured;
            var edge = index.Nearest(place).Edge;
            var next = (edge + 1) % laid.Count;
            var corner = laid[edge].DistanceTo(place) <= laid[next].DistanceTo(place) ? edge : next;

            // A mirrored outline runs through its corners the other way.
            return section.IsMirrored ? laid.Count - 1 - corner : corner;
        })];
    }

    /// <summary>The fit's motions at the places (x, y, turn, scale as far as free), and what solves for them and the even offset.</summary>
    private static (Matrix<double> Motions, Matrix<double> Solver)? Fit(IReadOnlyList<DeviationSample> samples, AlignmentChoice alignment)
    {
        var freedom = alignment.Method switch
        {
            SectionAlignmentMethod.BestFit => alignment.Rule.Freedom,
            SectionAlignmentMethod.Centroids => AlignmentFreedom.X | AlignmentFreedom.Y,
            _ => AlignmentFreedom.None,
        };
        var count = samples.Count;
        var (middleX, middleY) = (samples.Average(s => s.Reference.XMm), samples.Average(s => s.Reference.YMm));
        var columns = new List<double[]>();
        var normals = Enumerable.Range(0, count).Select(i => Normal(samples, i)).ToArray();
        void Add(AlignmentFreedom one, Func<int, double> value)
        {
            if (freedom.HasFlag(one))
            {
                columns.Add([.. Enumerable.Range(0, count).Select(value)]);
            }
        }

        Add(AlignmentFreedom.X, i => normals[i].X);
        Add(AlignmentFreedom.Y, i => normals[i].Y);
        Add(AlignmentFreedom.Rotation, i => (normals[i].Y * (samples[i].Reference.XMm - middleX)) - (normals[i].X * (samples[i].Reference.YMm - middleY)));
        Add(AlignmentFreedom.Scale, i => (normals[i].X * (samples[i].Reference.XMm - middleX)) + (normals[i].Y * (samples[i].Reference.YMm - middleY)));
        if (columns.Count == 0)
        {
            return null;
        }

        var motions = Matrix<double>.Build.DenseOfColumnArrays(columns);
        if (alignment.Rule.HasEvenOffset || alignment.Method == SectionAlignmentMethod.Centroids)
        {
            columns.Add([.. Enumerable.Repeat(1.0, count)]);
        }

        var all = Matrix<double>.Build.DenseOfColumnArrays(columns);
        var eigen = all.TransposeThisAndMultiply(all).Evd(Symmetricity.Symmetric);
        var inverse = Matrix<double>.Build.Dense(columns.Count, columns.Count);
        for (var k = 0; k < columns.Count; k++)
        {
            var strength = eigen.EigenValues[k].Real;
            if (strength > WeakestDirection * eigen.EigenValues[columns.Count - 1].Real)
            {
                var direction = eigen.EigenVectors.Column(k);
                inverse += direction.OuterProduct(direction) / strength;
            }
        }

        return (motions, inverse * all.Transpose());
    }

    /// <summary>The outward normal at a sample, from its two neighbours.</summary>
    internal static (double X, double Y) Normal(IReadOnlyList<DeviationSample> samples, int i)
    {
        var (before, after) = (samples[(i + samples.Count - 1) % samples.Count].Reference, samples[(i + 1) % samples.Count].Reference);
        var length = before.DistanceTo(after);
        return ((after.YMm - before.YMm) / length, (before.XMm - after.XMm) / length);
    }
}

/// <summary>A section that bears errors, where it lies in a comparison.</summary>
/// <param name="OwnFrame">Its outline in its own frame, mm.</param>
/// <param name="Laid">The same outline where it lies, corner for corner but for a mirrored one's order.</param>
/// <param name="ErrorSources">Its causes of error, in its own frame.</param>
/// <param name="IsReference">True for the reference, false for the measured section.</param>
/// <param name="IsMirrored">True when it was mirrored.</param>
public sealed record ErrorBearer(
    Outline OwnFrame, Outline Laid, IReadOnlyList<OutlineErrorSource> ErrorSources, bool IsReference, bool IsMirrored);
