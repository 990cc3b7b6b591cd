namespace SectionScan.Testing.Rendering;

/// <summary>How the light on the sensor becomes a file, in the order of the members.</summary>
public sealed record DevelopSettings
{
    /// <summary>Brightness: 1 puts evenly lit paper at 72 % of full scale in linear light.</summary>
    public double Exposure { get; init; } = 1;

    /// <summary>The loss of light in the corners, as a share.</summary>
    public double Vignette { get; init; } = 0.15;

    /// <summary>Standard deviation of the lens's blur, px, in linear light.</summary>
    public double BlurSigmaPx { get; init; } = 0.75;

    /// <summary>Length of the streak of a shaken camera, px.</summary>
    public double MotionPx { get; init; }

    /// <summary>Direction of that streak, degrees from the right, clockwise in the photo.</summary>
    public double MotionDegrees { get; init; }

    /// <summary>Whether the colours pass a Bayer mosaic and a bilinear demosaic.</summary>
    public bool Bayer { get; init; } = true;

    /// <summary>Standard deviation of the photon noise at full scale.</summary>
    public double ShotNoise { get; init; } = 0.006;

    /// <summary>Standard deviation of the read noise, of full scale.</summary>
    public double ReadNoise { get; init; } = 0.0012;

    /// <summary>The strength of the s-curve over the sRGB curve, 0 to 1.</summary>
    public double SCurve { get; init; } = 0.15;

    /// <summary>Unsharp mask, amount (radius 1 px), on the coded values.</summary>
    public double Sharpening { get; init; } = 0.35;

    /// <summary>JPEG quality, libjpeg's scale, 4:2:0.</summary>
    public int JpegQuality { get; init; } = 93;

    /// <summary>No blur, mosaic, noise, sharpening or vignette: for tests of the geometry.</summary>
    public static DevelopSettings Ideal { get; } = new()
    {
        Vignette = 0,
        BlurSigmaPx = 0,
        Bayer = false,
        ShotNoise = 0,
        ReadNoise = 0,
        Sharpening = 0,
        SCurve = 0,
        JpegQuality = 97,
    };
}
