namespace SectionScan.Metrology.Cameras;

/// <summary>What is known of a lens before a photo's own target is looked at: its nine numbers (fx, fy, cx, cy, k1, k2, p1, p2, k3)
/// with their joint uncertainty.</summary>
/// <param name="Mean">The most likely lens.</param>
/// <param name="Root">Nine rows of nine: a square root L of the covariance (covariance = L·Lᵀ), lower triangular. The lens is
/// Mean + L·z with z standard normal.</param>
/// <param name="Source">"profile" or "self-calibrated", for reports.</param>
public sealed record LensPrior(Lens Mean, double[][] Root, string Source)
{
    /// <summary>How many numbers make a lens.</summary>
    public const int ParameterCount = 9;

    // EXIF rounds the focal length to whole millimetres (±1.9 % at 26 mm); crop, digital zoom and stabilisation shift it more
    // (about 4 %: common practice, no source).
    private const double ExifFocalRelativeUncertainty = 0.04;
    private const double NoExifFocalRelativeUncertainty = 0.25;
    private const double PixelAspectUncertainty = 0.0005;

    /// <summary>The prior for a camera that nobody has profiled: focal length from EXIF when there (4 %), else the usual phone's
    /// main camera (25 %); principal point within 1 % of the frame; moderate distortion.</summary>
    /// <param name="widthPx">Photo width as displayed, px.</param>
    /// <param name="heightPx">Photo height as displayed, px.</param>
    /// <param name="focal35Mm">EXIF's FocalLengthIn35mmFilm, or null when absent or absurd.</param>
    /// <remarks>f_px = f35·√(w² + h²)/43.26661531, the diagonal convention (CIPA; cited from memory).</remarks>
    public static LensPrior FromExif(int widthPx, int heightPx, double? focal35Mm)
    {
        var diagonal = Math.Sqrt(((double)widthPx * widthPx) + ((double)heightPx * heightPx));
        var focal = (focal35Mm ?? 27) * diagonal / 43.26661531;
        var relative = focal35Mm is null ? NoExifFocalRelativeUncertainty : ExifFocalRelativeUncertainty;
        var centre = 0.008 * Math.Max(widthPx, heightPx);
        var mean = new Lens(focal, focal, (widthPx - 1) / 2.0, (heightPx - 1) / 2.0, 0, 0, 0, 0, 0);
        var root = new double[ParameterCount][];
        for (var i = 0; i < ParameterCount; i++)
        {
            root[i] = new double[ParameterCount];
        }

        root[0][0] = focal * relative;
        root[1][0] = focal * relative;
        root[1][1] = focal * PixelAspectUncertainty;
        root[2][2] = centre;
        root[3][3] = centre;
        root[4][4] = 0.15;
        root[5][5] = 0.25;
        root[6][6] = 0.001;
        root[7][7] = 0.001;
        root[8][8] = 0.15;
        return new(mean, root, "self-calibrated");
    }

    /// <summary>The prior for learning a lens from photos: as good as nothing, only kept from running away.</summary>
    /// <param name="widthPx">Photo width, px.</param>
    /// <param name="heightPx">Photo height, px.</param>
    /// <param name="focal35Mm">EXIF's FocalLengthIn35mmFilm, or null.</param>
    public static LensPrior Unknown(int widthPx, int heightPx, double? focal35Mm)
    {
        var mean = FromExif(widthPx, heightPx, focal35Mm).Mean;
        double[] spread = [mean.FocalXPx, mean.FocalXPx, 0.2 * widthPx, 0.2 * widthPx, 2, 5, 0.1, 0.1, 20];
        var root = spread.Select((s, i) => Enumerable.Range(0, ParameterCount).Select(j => i == j ? s : 0.0).ToArray()).ToArray();
        return new(mean, root, "unknown");
    }

    /// <summary>The lens at Mean + L·z.</summary>
    /// <param name="z">Nine standard-normal coordinates, or the first nine of a longer vector.</param>
    public Lens At(ReadOnlySpan<double> z)
    {
        Span<double> shift = stackalloc double[ParameterCount];
        for (var i = 0; i < ParameterCount; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                shift[i] += Root[i][j] * z[j];
            }
        }

        return new(
            Mean.FocalXPx + shift[0], Mean.FocalYPx + shift[1], Mean.CentreXPx + shift[2], Mean.CentreYPx + shift[3],
            Mean.K1 + shift[4], Mean.K2 + shift[5], Mean.P1 + shift[6], Mean.P2 + shift[7], Mean.K3 + shift[8]);
    }
}
