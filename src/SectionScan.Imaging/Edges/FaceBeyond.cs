using System.Runtime.Intrinsics;

namespace SectionScan.Imaging.Edges;

/// <summary>Whether the face goes on beyond the edge that was measured: what lies outside is coloured like the face and unlike the paper, as
/// where a saw mark of a near-white slice was taken for its edge.</summary>
internal static class FaceBeyond
{
    private const double StepMm = 0.2;
    private const double InsideFromMm = -1.8;
    private const double InsideToMm = -0.6;
    private const double OutsideFromMm = 0.8;
    private const double OutsideToMm = 2;
    private const double FarthestMm = 9;
    private const int PlacesApart = 4;

    // Face and paper must differ by more than noise and grain; what is nearer to the face than this share of the way to paper is face.
    // Only a face about as light as paper has edges that faint; a dark one would be taken for its own shadow here.
    private const float LeastDifference = 0.02f;
    private const float MostDifference = 0.25f;
    private const float LikeFace = 0.35f;
    private const float Even = 0.25f;
    private const float LeftFace = 0.5f;

    /// <summary>How far the face's colour goes on at each place of a slice's edge.</summary>
    /// <param name="sampler">Reads the photo in the plane of the face.</param>
    /// <param name="curve">The measured edge.</param>
    /// <returns>mm beyond the edge for each point of the curve, at most 9; 0 where the face ends there, or where paper and face are alike
    /// or the paper's colour is not known.</returns>
    public static double[] ReachMm(ProfileSampler sampler, ClosedCurve curve)
    {
        var reach = new double[curve.Points.Length];
        var line = new Vector128<float>[(int)((FarthestMm - InsideFromMm) / StepMm) + 1];
        for (var i = 0; i < reach.Length; i += PlacesApart)
        {
            if (sampler.PaperColour(curve.Points[i]) is not { } paper)
            {
                return reach;
            }

            sampler.ReadColour(curve.Points[i], curve.SteadyNormals[i], InsideFromMm, StepMm, line);
            Array.Fill(reach, Reach(line, paper), i, Math.Min(PlacesApart, reach.Length - i));
        }

        return reach;
    }

    private static double Reach(ReadOnlySpan<Vector128<float>> line, Vector128<float> paper)
    {
        var face = Mean(line, InsideFromMm, InsideToMm);
        var difference = Distance(paper, face);
        var middle = (OutsideFromMm + OutsideToMm) / 2;
        var (near, far) = (Mean(line, OutsideFromMm, middle), Mean(line, middle, OutsideToMm));
        if (difference is < LeastDifference or > MostDifference || Distance(near, face) > LikeFace * difference || Distance(far, face) > LikeFace * difference
            || Distance(near, far) > Even * difference)
        {
            return 0;
        }

        var at = OutsideToMm;
        while (at + (2 * StepMm) < FarthestMm && Distance(Mean(line, at, at + (2 * StepMm)), face) < LeftFace * difference)
        {
            at += StepMm;
        }

        return at;
    }

    private static Vector128<float> Mean(ReadOnlySpan<Vector128<float>> line, double fromMm, double toMm)
    {
        var (from, to) = ((int)Math.Round((fromMm - InsideFromMm) / StepMm), (int)Math.Round((toMm - InsideFromMm) / StepMm));
        var sum = Vector128<float>.Zero;
        for (var k = from; k <= to; k++)
        {
            sum += line[k];
        }

        return sum * (1f / (to - from + 1));
    }

    private static float Distance(Vector128<float> a, Vector128<float> b)
    {
        var way = (a - b).WithElement(3, 0);
        return MathF.Sqrt(Vector128.Dot(way, way));
    }
}
