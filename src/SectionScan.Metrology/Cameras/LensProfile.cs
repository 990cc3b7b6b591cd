using SectionScan.Metrology.Results;

namespace SectionScan.Metrology.Cameras;

/// <summary>What is kept of a calibrated lens.</summary>
/// <param name="Camera">Maker and model from EXIF, or null.</param>
/// <param name="WidthPx">Photo width as stored, px.</param>
/// <param name="HeightPx">Photo height as stored, px.</param>
/// <param name="Focal35Mm">EXIF focal length, 35 mm equivalent, or null: another value is another lens or zoom.</param>
/// <param name="MadeAt">When the newest of the photos was taken (EXIF), ISO 8601, or null.</param>
/// <param name="Lens">The lens.</param>
/// <param name="Covariance">Nine by nine; order fx, fy, cx, cy, k1, k2, p1, p2, k3.</param>
/// <param name="RmsPx">Root mean square of all reprojection errors, px.</param>
/// <param name="Photos">Each photo's name and root mean square error.</param>
/// <param name="CoveredShare">Share of the frame (in a grid of 6 × 4) that the target covered in at least one photo.</param>
public sealed record LensProfile(
    string? Camera,
    int WidthPx,
    int HeightPx,
    double? Focal35Mm,
    string? MadeAt,
    Lens Lens,
    IReadOnlyList<IReadOnlyList<double>> Covariance,
    double RmsPx,
    IReadOnlyList<LensProfilePhoto> Photos,
    double CoveredShare)
{
    /// <summary>The schema's name, stored inside each document.</summary>
    public const string SchemaName = "sectionscan/lens/1";

    /// <summary>The profile as prior for a photo of a given size: as it is, scaled for a photo that was only made smaller or larger,
    /// turned for one whose pixels were turned.</summary>
    /// <param name="widthPx">The photo's stored width.</param>
    /// <param name="heightPx">The photo's stored height.</param>
    /// <param name="where">The photo, for messages.</param>
    /// <returns>The prior, or <c>lens-does-not-fit</c>.</returns>
    public Result<LensPrior> PriorFor(int widthPx, int heightPx, string where)
    {
        var turned = (widthPx > heightPx) != (WidthPx > HeightPx);
        var (width, height) = turned ? (HeightPx, WidthPx) : (WidthPx, HeightPx);
        var scale = (double)widthPx / width;
        if (Math.Abs((scale * height) - heightPx) > 2)
        {
            return LensProblems.DoesNotFit(where, WidthPx, HeightPx, widthPx, heightPx);
        }

        var c = Matrices.Of(Covariance);
        var lens = Lens;
        if (turned)
        {
            // Which way the pixels were turned is not known: the principal point's offset is lost, the rest stays.
            lens = new(lens.FocalYPx, lens.FocalXPx, (width - 1) / 2.0, (height - 1) / 2.0, lens.K1, lens.K2, 0, 0, lens.K3);
            (c[2, 2], c[3, 3]) = (c[2, 2] + Square(Lens.CentreXPx - ((WidthPx - 1) / 2.0)), c[3, 3] + Square(Lens.CentreYPx - ((HeightPx - 1) / 2.0)));
            (c[6, 6], c[7, 7]) = (c[6, 6] + Square(Lens.P1), c[7, 7] + Square(Lens.P2));
        }

        var scaled = new Lens(
            lens.FocalXPx * scale, lens.FocalYPx * scale, ((lens.CentreXPx + 0.5) * scale) - 0.5, ((lens.CentreYPx + 0.5) * scale) - 0.5,
            lens.K1, lens.K2, lens.P1, lens.P2, lens.K3);
        for (var i = 0; i < LensPrior.ParameterCount; i++)
        {
            for (var j = 0; j < LensPrior.ParameterCount; j++)
            {
                c[i, j] *= (i < 4 ? scale : 1) * (j < 4 ? scale : 1);
            }

            c[i, i] += 1e-16 + (1e-9 * c[i, i]);
        }

        // Autofocus and stabilisation change the focal length and the principal point a little from photo to photo.
        c[0, 0] += Square(0.001 * scaled.FocalXPx);
        c[1, 1] += Square(0.001 * scaled.FocalYPx);
        c[0, 1] += Square(0.001) * scaled.FocalXPx * scaled.FocalYPx * 0.9999;
        c[1, 0] = c[0, 1];
        c[2, 2] += Square(0.0005 * widthPx);
        c[3, 3] += Square(0.0005 * widthPx);
        return new LensPrior(scaled, c.Cholesky().Factor.ToRowArrays(), "profile");
    }

    private static double Square(double x) => x * x;
}
