namespace SectionScan.Imaging.Slices;

/// <summary>Logarithmic ratios as bytes, for the picture operations that want bytes.</summary>
internal static class FeatureScale
{
    private const float LightStep = 0.0125f;
    private const float TintStep = 0.01f;
    private const int LitPaper = 215;
    private const int Neutral = 128;

    /// <summary>A byte for ln(light ratio): 215 is lit paper.</summary>
    public static byte LightByte(float light) => (byte)Math.Clamp(MathF.Round(LitPaper + (light / LightStep)), 0, 255);

    /// <summary>A byte for a tint: 128 is the paper's own.</summary>
    public static byte TintByte(float tint) => (byte)Math.Clamp(MathF.Round(Neutral + (tint / TintStep)), 0, 255);

    /// <summary>A byte for a tint on a four times finer scale, for rubber that is nearly of the paper's tint.</summary>
    public static byte FineTintByte(float tint) => (byte)Math.Clamp(MathF.Round(Neutral + (4 * tint / TintStep)), 0, 255);

    /// <summary>ln(light ratio) of a byte.</summary>
    public static float Light(double level) => (float)(level - LitPaper) * LightStep;

    /// <summary>Tint of a byte.</summary>
    public static float Tint(double level) => (float)(level - Neutral) * TintStep;
}
