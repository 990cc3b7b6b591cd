using OpenCvSharp;

namespace SectionScan.Imaging.Slices;

/// <summary>A picture split at its edges. Owns native memory.</summary>
internal sealed class RegionMap : IDisposable
{
    private RegionMap(Mat features, Mat cores)
    {
        Labels = new Mat();
        Count = Cv2.ConnectedComponents(cores, Labels, PixelConnectivity.Connectivity8, MatType.CV_32SC1) - 1;
        Cv2.Watershed(features, Labels);
    }

    /// <summary>R × C, CV_32SC1: 1 to <see cref="Count"/>, −1 on the seams.</summary>
    public Mat Labels { get; }

    /// <summary>How many regions.</summary>
    public int Count { get; }

    /// <summary>Splits at edges: cores are what lies farther from any edge than the core radius, so that a gap in an edge lets
    /// nothing leak; from the cores, water rises to the edges' ridges.</summary>
    /// <param name="features">R × C, CV_8UC3.</param>
    /// <param name="coreRadius">In cells.</param>
    /// <param name="edgeStep">The change over three cells that counts as an edge, in the features' own bytes.</param>
    public static RegionMap Split(Mat features, int coreRadius, int edgeStep)
    {
        using var kernel = Cv2.GetStructuringElement(MorphShapes.Rect, new Size(3, 3));
        using var gradient = new Mat();
        Cv2.MorphologyEx(features, gradient, MorphTypes.Gradient, kernel);
        var planes = Cv2.Split(gradient);
        using var strongest = planes[0];
        using var second = planes[1];
        using var third = planes[2];
        Cv2.Max(strongest, second, strongest);
        Cv2.Max(strongest, third, strongest);
        using var flat = new Mat();
        Cv2.Threshold(strongest, flat, edgeStep, 255, ThresholdTypes.BinaryInv);

        // Bubbles and specks are no edges: close what is smaller than 0.8 mm of edge in a flat place.
        Cv2.MedianBlur(flat, flat, 5);
        using var distance = new Mat();
        Cv2.DistanceTransform(flat, distance, DistanceTypes.L2, DistanceTransformMasks.Mask3);
        using var cores = new Mat();
        Cv2.Threshold(distance, cores, coreRadius, 255, ThresholdTypes.Binary);
        cores.ConvertTo(cores, MatType.CV_8UC1);
        return new(features, cores);
    }

    /// <summary>Joins neighbours that look alike: a face that grain or bubbles have split is one face.</summary>
    /// <param name="regions">What the regions look like.</param>
    /// <returns>True when any were joined; the labels have changed then.</returns>
    public bool JoinAlike(IReadOnlyList<RegionStatistics> regions)
    {
        var of = regions.ToDictionary(r => r.Label);
        var target = Enumerable.Range(0, Count + 1).ToArray();
        foreach (var (a, b) in Neighbours())
        {
            if (of.TryGetValue(a, out var first) && of.TryGetValue(b, out var second) && first.LooksLike(second))
            {
                var (low, high) = (Math.Min(Root(a), Root(b)), Math.Max(Root(a), Root(b)));
                target[high] = low;
            }
        }

        if (!target.Where((t, i) => t != i).Any())
        {
            return false;
        }

        var label = Labels.GetUnsafeGenericIndexer<int>();
        var (rows, columns) = (Labels.Rows, Labels.Cols);
        for (var row = 0; row < rows; row++)
        {
            for (var column = 0; column < columns; column++)
            {
                if (label[row, column] > 0)
                {
                    label[row, column] = Root(label[row, column]);
                }
            }
        }

        return true;

        int Root(int l)
        {
            while (target[l] != l)
            {
                l = target[l];
            }

            return l;
        }
    }

    /// <summary>Pairs of regions that meet at a seam.</summary>
    private HashSet<(int A, int B)> Neighbours()
    {
        var pairs = new HashSet<(int, int)>();
        var label = Labels.GetUnsafeGenericIndexer<int>();
        var (rows, columns) = (Labels.Rows, Labels.Cols);
        for (var row = 1; row < rows - 1; row++)
        {
            for (var column = 1; column < columns - 1; column++)
            {
                if (label[row, column] > 0)
                {
                    continue;
                }

                Add(label[row, column - 1], label[row, column + 1]);
                Add(label[row - 1, column], label[row + 1, column]);
            }
        }

        return pairs;

        void Add(int a, int b)
        {
            if (a > 0 && b > 0 && a != b)
            {
                pairs.Add((Math.Min(a, b), Math.Max(a, b)));
            }
        }
    }

    /// <inheritdoc/>
    public void Dispose() => Labels.Dispose();
}
