using SectionScan.Metrology.Cameras;

namespace SectionScan.Testing.Rendering;

/// <summary>The ray of every pixel as its slope in the target frame: mm to the right and mm down the paper for each mm of fall. Exact on
/// a grid of 4 px, straight between: less than 0.001 px off for a phone's lens.</summary>
internal sealed class RayField
{
    private const int Step = 4;
    private readonly double[] slopes;
    private readonly int nodes;

    public RayField(Camera camera, int widthPx, int heightPx)
    {
        nodes = (widthPx / Step) + 2;
        var rows = (heightPx / Step) + 2;
        slopes = new double[2 * nodes * rows];
        var r = camera.Pose.RotationMatrix();
        Parallel.For(0, rows, row =>
        {
            for (var k = 0; k < nodes; k++)
            {
                var (x, y) = camera.Lens.Undistort((k * Step) - 0.5, (row * Step) - 0.5);
                var dx = (r[0] * x) + (r[3] * y) + r[6];
                var dy = (r[1] * x) + (r[4] * y) + r[7];
                var dz = (r[2] * x) + (r[5] * y) + r[8];
                if (dz < 0.05)
                {
                    throw new ArgumentException("The camera sees the horizon; tilt it less.", nameof(camera));
                }

                slopes[2 * ((row * nodes) + k)] = dx / dz;
                slopes[(2 * ((row * nodes) + k)) + 1] = dy / dz;
            }
        });
    }

    /// <summary>The slopes at the pixel corners of one corner row (row y is the edge above pixel row y), <c>2 (width + 1)</c> numbers.</summary>
    public void FillCornerRow(int cornerRow, Span<double> into)
    {
        var node = cornerRow / Step;
        var down = (cornerRow % Step) / (double)Step;
        var upper = slopes.AsSpan(2 * node * nodes, 2 * nodes);
        var lower = slopes.AsSpan(2 * (node + 1) * nodes, 2 * nodes);
        for (var k = 0; k < into.Length; k += 2)
        {
            var column = k / 2;
            var at = 2 * (column / Step);
            var right = (column % Step) / (double)Step;
            for (var c = 0; c < 2; c++)
            {
                var a = upper[at + c] + (down * (lower[at + c] - upper[at + c]));
                var b = upper[at + 2 + c] + (down * (lower[at + 2 + c] - upper[at + 2 + c]));
                into[k + c] = a + (right * (b - a));
            }
        }
    }
}
