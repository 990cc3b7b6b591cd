using OpenCvSharp;

namespace SectionScan.Imaging.Slices;

/// <summary>What a region looks like.</summary>
/// <param name="Label">Its number in the map.</param>
/// <param name="AreaMm2">Its area, mm².</param>
/// <param name="Light">Median ln(light ratio to lit paper).</param>
/// <param name="LightSpread">Robust standard deviation of it.</param>
/// <param name="RedGreen">Median tint.</param>
/// <param name="BlueGreen">Median tint.</param>
/// <param name="TouchesBorder">Length along the window's border, cells.</param>
internal sealed record RegionStatistics(
    int Label, double AreaMm2, double Light, double LightSpread, double RedGreen, double BlueGreen, int TouchesBorder)
{
    // Of a strong tint nothing but the same rubber is; then stains may be this deep. Without tint it could be a shadow.
    private const double StrongTint = 0.3;
    private const double StainLight = 0.35;

    /// <summary>Distance of the tint from the paper's.</summary>
    public double Tint => Math.Sqrt((RedGreen * RedGreen) + (BlueGreen * BlueGreen));

    /// <summary>True when the other could be a piece of the same surface: the same tint, and light within a stain's.</summary>
    public bool LooksLike(RegionStatistics other) =>
        Math.Abs(Light - other.Light) < (Tint > StrongTint ? StainLight : Math.Max(0.12, 2.5 * Math.Min(LightSpread, 0.12)))
        && Math.Abs(RedGreen - other.RedGreen) < 0.015 + (0.08 * Tint)
        && Math.Abs(BlueGreen - other.BlueGreen) < 0.015 + (0.08 * Tint);

    /// <summary>Looks at every region.</summary>
    public static IReadOnlyList<RegionStatistics> Of(Mat labels, int count, Mat features, double stepMm)
    {
        var histograms = new int[count + 1, 3, 256];
        var cells = new int[count + 1];
        var border = new int[count + 1];
        var label = labels.GetUnsafeGenericIndexer<int>();
        var feature = features.GetUnsafeGenericIndexer<Vec3b>();
        var (rows, columns) = (labels.Rows, labels.Cols);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                var own = label[row, column];
                if (own <= 0)
                {
                    continue;
                }

                var f = feature[row, column];
                histograms[own, 0, f.Item0]++;
                histograms[own, 1, f.Item1]++;
                histograms[own, 2, f.Item2]++;
                cells[own]++;
                border[own] += row <= 1 || column <= 1 || row >= rows - 2 || column >= columns - 2 ? 1 : 0;
            }
        }

        var statistics = new List<RegionStatistics>();
        for (var own = 1; own <= count; own++)
        {
            if (cells[own] == 0)
            {
                continue;
            }

            var light = Quantile(histograms, own, 0, cells[own], 0.5);
            var low = Quantile(histograms, own, 0, cells[own], 0.16);
            var high = Quantile(histograms, own, 0, cells[own], 0.84);
            statistics.Add(new(
                own, cells[own] * stepMm * stepMm, FeatureScale.Light(light), (FeatureScale.Light(high) - FeatureScale.Light(low)) / 2,
                FeatureScale.Tint(Quantile(histograms, own, 1, cells[own], 0.5)),
                FeatureScale.Tint(Quantile(histograms, own, 2, cells[own], 0.5)), border[own]));
        }

        return statistics;
    }

    private static int Quantile(int[,,] histograms, int own, int plane, int total, double share)
    {
        var below = 0;
        for (var level = 0; level < 256; level++)
        {
            below += histograms[own, plane, level];
            if (below >= share * total)
            {
                return level;
            }
        }

        return 255;
    }
}
