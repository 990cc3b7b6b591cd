namespace SectionScan.Imaging.Photos;

/// <summary>From stored pixel values to light.</summary>
internal static class LinearLight
{
    /// <summary>Relative luminous flux, 0 to 1, of each of the 256 stored values.</summary>
    /// <remarks>IEC 61966-2-1 (sRGB), the inverse transfer function (cited from memory).</remarks>
    public static readonly float[] OfStored = MakeTable();

    /// <summary>Natural logarithm of the flux of each stored value; black counts as half a step above nothing.</summary>
    public static readonly float[] LogOfStored = [.. OfStored.Select(light => MathF.Log(MathF.Max(light, 1f / 4096)))];

    /// <summary>The stored value, 0 to 1, of a relative luminous flux; too bright counts as full.</summary>
    public static float Stored(float flux) =>
        Math.Clamp(flux <= 0.0031308f ? 12.92f * flux : (1.055f * MathF.Pow(flux, 1 / 2.4f)) - 0.055f, 0, 1);

    private static float[] MakeTable()
    {
        var table = new float[256];
        for (var i = 0; i < 256; i++)
        {
            var v = i / 255.0;
            table[i] = (float)(v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4));
        }

        return table;
    }
}
