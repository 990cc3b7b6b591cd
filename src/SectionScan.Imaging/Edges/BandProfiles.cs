namespace SectionScan.Imaging.Edges;

/// <summary>The colours in a band round a rough outline, and what leaving the face at each place would mean.</summary>
internal sealed class BandProfiles
{
    // Beside an edge the colours are taken this far from it, clear of blur, over this length; in pixels where they are coarse.
    private const double ClearMm = 0.15;
    private const double ClearPx = 2.5;
    private const double BesideMm = 0.3;
    private const double BesidePx = 4;
    private const double FaceReachMm = 1.2;

    // Half width in colour (0 to 1, stored values) over which an edge or a difference begins to count: five grey levels of 255
    // are noise and paper texture, twenty are an edge.
    private const float FaintContrast = 0.035f;
    private const float FaceTolerance = 0.06f;

    // A face may be stained by this much over its length; a wall differs more.
    private const float StainTolerance = 0.14f;

    // The steady colour is the median over this many places to each side, so that a bubble does not count.
    private const int FaceNeighbours = 8;

    // Sum of both tints of the face beyond which it is told from shadow by tint; and how much light counts then, and else (the root of
    // three channels).
    private const float TintedFace = 0.2f;
    private const float LightOfTinted = 1.7f;
    private const float LightOfPlain = 1.7f;

    private readonly int places;
    private readonly int count;
    private readonly int first;
    private readonly int clear;
    private readonly int beside;
    private readonly int offsets;
    private readonly double stepMm;
    private readonly float[] colours;
    private readonly float[] sums;
    private readonly float[] steadyFace;

    /// <summary>Reads the band.</summary>
    /// <param name="sampler">Reads the photo.</param>
    /// <param name="curve">The rough outline.</param>
    /// <param name="inwardMm">How far inside it the face's edge may be.</param>
    /// <param name="outwardMm">How far outside.</param>
    /// <param name="beyondMm">How much farther out the foot of a wall may show.</param>
    /// <param name="stepMm">The step across.</param>
    /// <param name="direction">+1 when the face is inside the curve, −1 when it is outside.</param>
    public BandProfiles(ProfileSampler sampler, ClosedCurve curve, double inwardMm, double outwardMm, double beyondMm, double stepMm, int direction)
    {
        this.stepMm = stepMm;
        places = curve.Points.Length;
        offsets = (int)Math.Round((inwardMm + outwardMm + beyondMm) / stepMm) + 1;
        var pixelMm = sampler.MillimetresPerPixel(curve.Points[0]);
        clear = Math.Max(2, (int)Math.Round(Math.Max(ClearMm, ClearPx * pixelMm) / stepMm));
        beside = Math.Max(1, (int)Math.Round(Math.Max(BesideMm, BesidePx * pixelMm) / stepMm));
        first = (int)Math.Round(FaceReachMm / stepMm) + clear + beside;
        count = first + offsets + clear + beside;
        var raw = new float[places * count * 3];
        for (var i = 0; i < places; i++)
        {
            var n = curve.Normals[i];
            sampler.ReadColour(
                curve.Points[i], (n.X * direction, n.Y * direction), -inwardMm - (first * stepMm), stepMm, raw.AsSpan(i * count * 3, count * 3));
        }

        Separate(raw);
        colours = AverageAlong(raw);
        sums = Sums();
        steadyFace = SteadyFaceColours();
    }

    /// <summary>How many offsets the band has.</summary>
    public int Offsets => offsets;

    /// <summary>Looks for edges at every offset of a place.</summary>
    /// <param name="i">The place along the outline.</param>
    /// <param name="leaving">Gets, for each offset, 0 to 1: a clear, sharp edge that leads out of what is the face's colour there.</param>
    /// <param name="edges">Gets, for each offset, 0 to 1: a clear, sharp edge of any kind.</param>
    public void FindEdges(int i, Span<float> leaving, Span<float> edges)
    {
        var row = colours.AsSpan(i * count * 3, count * 3);
        var inner = first - clear - beside;
        Span<float> before = stackalloc float[3];
        Span<float> after = stackalloc float[3];
        Span<float> face = stackalloc float[3];
        for (var k = 0; k < edges.Length; k++)
        {
            var at = first + k;
            Mean(i, at - clear - beside, beside, before);
            Mean(i, at + clear, beside, after);
            Mean(i, at - clear - beside - inner, inner, face);
            var contrast = Distance(before, after);
            edges[k] = contrast / (contrast + FaintContrast) * Sharpness(row, at, clear, before, after);
            leaving[k] = edges[k] / (1 + Square(Distance(before, face) / FaceTolerance))
                / (1 + Square(Distance(before, steadyFace.AsSpan(3 * i, 3)) / StainTolerance));
        }
    }

    /// <summary>How much of the change between before and after happens within the edge's own width, and how well it is centred.</summary>
    private static float Sharpness(ReadOnlySpan<float> row, int at, int clear, ReadOnlySpan<float> before, ReadOnlySpan<float> after)
    {
        float along = 0, total = 0, centre = 0;
        for (var c = 0; c < 3; c++)
        {
            var change = after[c] - before[c];
            along += (row[(3 * (at + clear - 1)) + c] - row[(3 * (at - clear + 1)) + c]) * change;
            centre += (row[(3 * at) + c] - before[c]) * change;
            total += change * change;
        }

        if (total <= 0)
        {
            return 0;
        }

        var balance = 1 - Math.Min(1, 1.6f * Math.Abs((centre / total) - 0.5f));
        return Math.Clamp(along / total, 0, 1) * balance;
    }

    /// <summary>From blue, green, red to light and two tints. For a tinted face light counts less: the rim of a shadow changes nothing
    /// else, and a wall changes tint with light.</summary>
    private void Separate(float[] raw)
    {
        var tints = new List<float>();
        for (var i = 0; i < places; i++)
        {
            for (var k = 0; k < first / 2; k += 2)
            {
                var at = ((i * count) + k) * 3;
                tints.Add(Math.Abs(raw[at + 2] - raw[at + 1]) + Math.Abs(raw[at] - raw[at + 1]));
            }
        }

        tints.Sort();
        var weight = tints[tints.Count / 2] > TintedFace ? LightOfTinted : LightOfPlain;
        for (var at = 0; at < raw.Length; at += 3)
        {
            var (blue, green, red) = (raw[at], raw[at + 1], raw[at + 2]);
            raw[at] = weight * ((0.114f * blue) + (0.587f * green) + (0.299f * red));
            raw[at + 1] = red - green;
            raw[at + 2] = blue - green;
        }
    }

    private float[] AverageAlong(float[] raw)
    {
        // Three neighbours: grain goes, an edge that is nearly square to the normal stays.
        var mean = new float[raw.Length];
        var length = count * 3;
        for (var i = 0; i < places; i++)
        {
            var (a, b, c) = (((i + places - 1) % places) * length, i * length, ((i + 1) % places) * length);
            for (var k = 0; k < length; k++)
            {
                mean[b + k] = (raw[a + k] + (2 * raw[b + k]) + raw[c + k]) / 4;
            }
        }

        return mean;
    }

    /// <summary>The colour of the innermost part of the band, which no wall reaches.</summary>
    private float[] SteadyFaceColours()
    {
        var own = new float[places * 3];
        for (var i = 0; i < places; i++)
        {
            Mean(i, 0, first / 2, own.AsSpan(i * 3, 3));
        }

        var steady = new float[places * 3];
        Span<float> values = stackalloc float[(2 * FaceNeighbours) + 1];
        for (var i = 0; i < places; i++)
        {
            for (var c = 0; c < 3; c++)
            {
                for (var k = -FaceNeighbours; k <= FaceNeighbours; k++)
                {
                    values[k + FaceNeighbours] = own[(((i + k + places) % places) * 3) + c];
                }

                values.Sort();
                steady[(i * 3) + c] = values[FaceNeighbours];
            }
        }

        return steady;
    }

    /// <summary>Running sums along each profile, so that any mean costs the same.</summary>
    private float[] Sums()
    {
        var running = new float[places * (count + 1) * 3];
        for (var i = 0; i < places; i++)
        {
            var from = i * count * 3;
            var to = i * (count + 1) * 3;
            for (var k = 0; k < 3 * count; k++)
            {
                running[to + k + 3] = running[to + k] + colours[from + k];
            }
        }

        return running;
    }

    private void Mean(int i, int from, int length, Span<float> mean)
    {
        var low = ((i * (count + 1)) + from) * 3;
        var high = low + (3 * length);
        mean[0] = (sums[high] - sums[low]) / length;
        mean[1] = (sums[high + 1] - sums[low + 1]) / length;
        mean[2] = (sums[high + 2] - sums[low + 2]) / length;
    }

    private static float Distance(ReadOnlySpan<float> a, ReadOnlySpan<float> b) =>
        MathF.Sqrt(Square(a[0] - b[0]) + Square(a[1] - b[1]) + Square(a[2] - b[2]));

    private static float Square(float x) => x * x;
}
