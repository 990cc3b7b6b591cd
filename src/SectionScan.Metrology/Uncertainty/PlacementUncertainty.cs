using MathNet.Numerics.LinearAlgebra;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Metrology.Uncertainty;

/// <summary>How well the best place of a pattern of outlines is known.</summary>
/// <param name="XMm">u of the move along x, mm.</param>
/// <param name="YMm">u of the move along y, mm.</param>
/// <param name="TurnRad">u of the turn, rad.</param>
public sealed record PlacementUncertainty(double XMm, double YMm, double TurnRad)
{
    /// <summary>The standard uncertainties of the move and turn of a least squares fit, from the errors of all outlines in it.</summary>
    /// <param name="outlines">Every outline of both sides where it lies, mm, in one frame, with its causes of error in that frame.</param>
    /// <param name="middle">The place about which the turn is counted, mm.</param>
    /// <remarks>The fit moves by H⁻¹Σwjδ when walls move by δ along their normals, with j = (nx, ny, n × arm), w the length of
    /// outline at a corner and H = Σwjjᵀ of one side (JCGM 100:2008, 5.1.2). A random edge gives σ²·L·H⁻¹.</remarks>
    public static PlacementUncertainty Of(
        IReadOnlyList<(Outline Outline, IReadOnlyList<OutlineErrorSource> Sources)> outlines, SectionPoint middle)
    {
        ArgumentNullException.ThrowIfNull(outlines);
        var rows = outlines.Select(each => Rows(each.Outline, middle)).ToList();
        var sum = rows.Aggregate(Matrix<double>.Build.Dense(3, 3), (h, row) => h + row.H) / 2;

        // A round pattern's turn is not known at all; a small ridge keeps its u finite and large.
        var inverse = (sum + (Matrix<double>.Build.DenseIdentity(3) * (1e-6 * sum.Trace()))).Inverse();
        var covariance = Matrix<double>.Build.Dense(3, 3);
        for (var k = 0; k < outlines.Count; k++)
        {
            var displacement = new OutlineDisplacement(outlines[k].Outline);
            foreach (var effect in outlines[k].Sources.SelectMany(source => source.Effects))
            {
                if (effect is RandomEdgeEffect noise)
                {
                    var spread = noise.StandardDeviationMm * noise.StandardDeviationMm * displacement.CorrelationLengthMm(noise);
                    covariance += spread * (inverse * rows[k].H * inverse);
                    continue;
                }

                var response = inverse * Push(displacement, effect, rows[k].J);
                covariance += response.OuterProduct(response);
            }
        }

        return new(Math.Sqrt(covariance[0, 0]), Math.Sqrt(covariance[1, 1]), Math.Sqrt(covariance[2, 2]));
    }

    private static (Vector<double>[] J, Matrix<double> H) Rows(Outline outline, SectionPoint middle)
    {
        var j = new Vector<double>[outline.Count];
        var h = Matrix<double>.Build.Dense(3, 3);
        for (var i = 0; i < j.Length; i++)
        {
            var (before, after) = (outline[i - 1], outline[i + 1]);
            var chord = Math.Max(before.DistanceTo(after), 1e-12);
            var (nx, ny) = ((after.YMm - before.YMm) / chord, (before.XMm - after.XMm) / chord);
            j[i] = Vector<double>.Build.DenseOfArray([nx, ny, (ny * (outline[i].XMm - middle.XMm)) - (nx * (outline[i].YMm - middle.YMm))]);
            h += (before.DistanceTo(outline[i]) + outline[i].DistanceTo(after)) / 2 * j[i].OuterProduct(j[i]);
        }

        return (j, h);
    }

    private static Vector<double> Push(OutlineDisplacement displacement, OutlineEffect effect, Vector<double>[] j)
    {
        SectionPoint[] moved = displacement.Corners.ToArray();
        displacement.Add(effect, 1, moved);
        var push = Vector<double>.Build.Dense(3);
        for (var i = 0; i < moved.Length; i++)
        {
            var was = displacement.Corners[i];
            var along = ((moved[i].XMm - was.XMm) * j[i][0]) + ((moved[i].YMm - was.YMm) * j[i][1]);
            push += displacement.LengthsMm[i] * along * j[i];
        }

        return push;
    }
}
