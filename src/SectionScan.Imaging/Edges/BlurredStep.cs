namespace SectionScan.Imaging.Edges;

/// <summary>A step seen through a Gaussian blur: Φ, the normal distribution function, from a table.</summary>
internal static class BlurredStep
{
    private const int PerUnit = 256;
    private const int Reach = 6;

    private static readonly float[] Table = MakeTable();

    /// <summary>Φ(x): 0 far below zero, ½ at zero, 1 far above; good to 1e-6.</summary>
    public static float At(double x)
    {
        var place = (x + Reach) * PerUnit;
        if (place <= 0)
        {
            return 0;
        }

        var low = (int)place;
        return low >= Table.Length - 1 ? 1 : Table[low] + ((float)(place - low) * (Table[low + 1] - Table[low]));
    }

    private static float[] MakeTable()
    {
        var table = new float[(2 * Reach * PerUnit) + 1];
        for (var i = 0; i < table.Length; i++)
        {
            table[i] = (float)MathNet.Numerics.Distributions.Normal.CDF(0, 1, ((double)i / PerUnit) - Reach);
        }

        return table;
    }
}
