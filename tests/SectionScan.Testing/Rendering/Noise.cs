namespace SectionScan.Testing.Rendering;

/// <summary>Seeded noise: hashes for each pixel and a smooth, endlessly repeating texture.</summary>
internal static class Noise
{
    private const int Side = 512;
    private static readonly float[] Smooth = MakeSmooth();
    private static readonly float[] Normal = MakeNormal();

    /// <summary>A well mixed 32-bit hash (the finaliser of MurmurHash3).</summary>
    public static uint Hash(uint a, uint b, uint c)
    {
        var h = (a * 0x9E3779B1u) ^ (b * 0x85EBCA77u) ^ (c * 0xC2B2AE3Du);
        h ^= h >> 16;
        h *= 0x85EBCA6Bu;
        h ^= h >> 13;
        h *= 0xC2B2AE35u;
        return h ^ (h >> 16);
    }

    /// <summary>A standard normal number from a hash.</summary>
    public static float NormalOf(uint hash) => Normal[hash >> 20] + ((Normal[hash & 0xFFF] - Normal[(hash >> 8) & 0xFFF]) * 0.01f);

    /// <summary>Smooth noise, about -1 to 1, features of about 4 units, repeating every 512.</summary>
    public static float At(double x, double y)
    {
        var (fx, fy) = (Math.Floor(x), Math.Floor(y));
        var (tx, ty) = ((float)(x - fx), (float)(y - fy));
        var (ix, iy) = ((int)(long)fx & (Side - 1), (int)(long)fy & (Side - 1));
        var (jx, jy) = ((ix + 1) & (Side - 1), (iy + 1) & (Side - 1));
        var upper = Smooth[(iy * Side) + ix] + (tx * (Smooth[(iy * Side) + jx] - Smooth[(iy * Side) + ix]));
        var lower = Smooth[(jy * Side) + ix] + (tx * (Smooth[(jy * Side) + jx] - Smooth[(jy * Side) + ix]));
        return upper + (ty * (lower - upper));
    }

    private static float[] MakeSmooth()
    {
        var made = new float[Side * Side];
        var weight = 1f;
        foreach (var cell in new[] { 8, 4, 2, 1 })
        {
            var cells = Side / cell;
            for (var y = 0; y < Side; y++)
            {
                for (var x = 0; x < Side; x++)
                {
                    var (cx, cy) = (x / cell, y / cell);
                    var (tx, ty) = (Ease((float)(x % cell) / cell), Ease((float)(y % cell) / cell));
                    var upper = Lerp(Value(cx, cy), Value(cx + 1, cy), tx);
                    var lower = Lerp(Value(cx, cy + 1), Value(cx + 1, cy + 1), tx);
                    made[(y * Side) + x] += weight * Lerp(upper, lower, ty);
                }
            }

            weight *= 0.55f;

            float Value(int cx, int cy) => (Hash((uint)(cx % cells), (uint)(cy % cells), (uint)cell) / (float)uint.MaxValue * 2) - 1;
        }

        return made;

        static float Ease(float t) => t * t * (3 - (2 * t));
        static float Lerp(float a, float b, float t) => a + (t * (b - a));
    }

    private static float[] MakeNormal()
    {
        var table = new float[4096];
        for (var k = 0; k < table.Length; k++)
        {
            table[k] = (float)MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, (k + 0.5) / table.Length);
        }

        return table;
    }
}
