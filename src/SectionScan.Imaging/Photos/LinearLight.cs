namespace SectionScan.Imaging.Photos;

/// <summary>From stored pixel values to light.</summary>
internal static class LinearLight
{
    /// <summary>Relative luminous flux, 0 to 1, of each of the 256 stored values.</summary>
    /// <remarks>IEC 61966-2-1 (sRGB), the inverse transfer function (cited from memory).</remarks>
    public static readonly float[] OfStored = MakeTable();

    /// <summary>Relative luminous flux of a stored value between the whole ones, 0 to 255.</summary>
    public static float Of(float stored)
    {
        var clamped = Math.Clamp(stored, 0f, 255f);
        var low = Math.Min((int)clamped, 254);
        return OfStored[low] + ((clamped - low) * (OfStored[low + 1] - OfStored[low]));
    }

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
