using System.Buffers;
using System.Runtime.Intrinsics;

namespace SectionScan.Imaging.Edges;

/// <summary>The colours in a band round a rough outline, and what leaving the face at each place would mean.</summary>
internal sealed class BandProfiles : IDisposable
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

    // Noise of a tint's change beside an edge below which it counts for more, and how much at most.
    private const float QuietTint = 0.01f;
    private const float MostTintWeight = 3;

    // Light is weighed by 1.7 here: a face within 15 % of the paper's light, or a little tinted.
    private const float NearWhite = 0.3f;

    // Shares of the way from the face's colour to the paper's, and of the paper's stored light, over which a place begins to count as lit
    // paper.
    private const float LeastPaperShare = 0.5f;
    private const float PaperShareRange = 0.35f;
    private const float ShadedPaper = 0.72f;
    private const float ShadeRange = 0.14f;

    // Face and paper nearer to one another in tint than this are told apart by light alone.
    private const float LeastTint = 0.06f;

    private readonly int places;
    private readonly int count;
    private readonly int first;
    private readonly int clear;
    private readonly int beside;
    private readonly int offsets;
    private readonly double stepMm;
    private readonly Vector128<float>[] colours;
    private readonly Vector128<float>[] sums;
    private readonly Vector128<float>[] steadyFace;
    private readonly Vector128<float>[]? paper;

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
        var raw = ArrayPool<Vector128<float>>.Shared.Rent(places * count);
        for (var i = 0; i < places; i++)
        {
            var n = curve.Normals[i];
            sampler.ReadColour(
                curve.Points[i], (n.X * direction, n.Y * direction), -inwardMm - (first * stepMm), stepMm, raw.AsSpan(i * count, count));
        }

        colours = ArrayPool<Vector128<float>>.Shared.Rent(places * count);
        sums = ArrayPool<Vector128<float>>.Shared.Rent(places * (count + 1));
        var separation = Separate(raw);
        ArrayPool<Vector128<float>>.Shared.Return(raw);
        paper = PaperColours(sampler, curve, separation);
        WeighTints();
        steadyFace = SteadyFaceColours();
    }

    /// <summary>How many offsets the band has.</summary>
    public int Offsets => offsets;

    /// <summary>Looks for edges at every offset of a place.</summary>
    /// <param name="i">The place along the outline.</param>
    /// <param name="leaving">Gets, for each offset, 0 to 1: a clear, sharp edge that leads out of what is the face's colour there.</param>
    /// <param name="edges">Gets, for each offset, 0 to 1: a clear, sharp edge of any kind.</param>
    /// <param name="lit">Gets, for each offset, 0 to 1: bare, lit paper lies just beyond; 0 throughout where the paper is not known.</param>
    public void FindEdges(int i, Span<float> leaving, Span<float> edges, Span<float> lit)
    {
        var row = colours.AsSpan(i * count, count);
        var inner = first - clear - beside;
        var steady = steadyFace[i];
        for (var k = 0; k < edges.Length; k++)
        {
            var at = first + k;
            var before = Mean(i, at - clear - beside, beside);
            var after = Mean(i, at + clear, beside);
            var face = Mean(i, at - clear - beside - inner, inner);
            var contrast = Distance(before, after);
            edges[k] = contrast / (contrast + FaintContrast) * Sharpness(row, at, clear, before, after);
            lit[k] = paper is null ? 0 : Lit(steady, after, paper[i]);
            leaving[k] = edges[k] / (1 + Square(Distance(before, face) / FaceTolerance))
                / (1 + Square(Distance(before, steady) / StainTolerance));
        }
    }

    /// <summary>How sure it is that what follows an edge is bare, lit paper: most of the way from the face's colour to the paper's, and
    /// not much darker than paper.</summary>
    private static float Lit(Vector128<float> face, Vector128<float> after, Vector128<float> paper)
    {
        var way = paper - face;
        var share = Vector128.Dot(after - face, way) / Math.Max(Vector128.Dot(way, way), 1e-6f);
        var light = after[0] / Math.Max(paper[0], 1e-6f);
        return Math.Clamp((share - LeastPaperShare) / PaperShareRange, 0, 1) * Math.Clamp((light - ShadedPaper) / ShadeRange, 0, 1);
    }

    /// <summary>How far what lies between two offsets has the face's tint rather than the paper's: 1 as the face, 0 as paper in any light; 0 too
    /// where face and paper are too alike in tint to tell.</summary>
    /// <param name="i">The place along the outline.</param>
    /// <param name="from">The nearer offset.</param>
    /// <param name="to">The farther offset.</param>
    public float FaceTintBetween(int i, int from, int to)
    {
        if (paper is null)
        {
            return 0;
        }

        var tints = Vector128.Create(0f, 1, 1, 0);
        var way = (steadyFace[i] - paper[i]) * tints;
        var third = Math.Max(1, (to - from) / 3);
        var between = Mean(i, first + from + third, Math.Max(1, to - from - (2 * third)));
        var length = Vector128.Dot(way, way);
        return length < Square(LeastTint) ? 0 : Vector128.Dot((between - paper[i]) * tints, way) / length;
    }

    /// <summary>Gives the band's memory back.</summary>
    public void Dispose()
    {
        ArrayPool<Vector128<float>>.Shared.Return(colours);
        ArrayPool<Vector128<float>>.Shared.Return(sums);
    }

    /// <summary>How much of the change between before and after happens within the edge's own width, and how well it is centred.</summary>
    private static float Sharpness(
        ReadOnlySpan<Vector128<float>> row, int at, int clear, Vector128<float> before, Vector128<float> after)
    {
        var change = after - before;
        var total = Vector128.Dot(change, change);
        if (total <= 0)
        {
            return 0;
        }

        var along = Vector128.Dot(row[at + clear - 1] - row[at - clear + 1], change);
        var centre = Vector128.Dot(row[at] - before, change);
        var balance = 1 - Math.Min(1, 1.6f * Math.Abs((centre / total) - 0.5f));
        return Math.Clamp(along / total, 0, 1) * balance;
    }

    /// <summary>From blue, green, red to light and two tints, each place in the mean with its two neighbours along the outline: grain goes,
    /// an edge that is nearly square to the normal stays. Their running sums make any mean across cost the same. For a tinted face light
    /// counts less: the rim of a shadow changes nothing else, and a wall changes tint with light.</summary>
    private Separation Separate(Vector128<float>[] raw)
    {
        var weight = IsTinted(raw) ? LightOfTinted : LightOfPlain;
        var separation = new Separation(
            Vector128.Create(weight * 0.114f, 0, 1, 0), Vector128.Create(weight * 0.587f, -1, -1, 0), Vector128.Create(weight * 0.299f, 1, 0, 0));
        var (fromBlue, fromGreen, fromRed) = (separation.FromBlue / 4, separation.FromGreen / 4, separation.FromRed / 4);
        for (var i = 0; i < places; i++)
        {
            var before = raw.AsSpan(((i + places - 1) % places) * count, count);
            var own = raw.AsSpan(i * count, count);
            var after = raw.AsSpan(((i + 1) % places) * count, count);
            var row = colours.AsSpan(i * count, count);
            var running = sums.AsSpan(i * (count + 1), count + 1);
            var sum = Vector128<float>.Zero;
            running[0] = sum;
            for (var k = 0; k < row.Length; k++)
            {
                var mean = before[k] + own[k] + own[k] + after[k];
                row[k] = (fromBlue * mean[0]) + (fromGreen * mean[1]) + (fromRed * mean[2]);
                sum += row[k];
                running[k + 1] = sum;
            }
        }

        return separation;
    }

    /// <summary>Near-white rubber differs from paper by a breath of tint, while its saw marks differ in light: a tint that is quiet over such a
    /// face counts for more. On any other face that would only raise the noise.</summary>
    private void WeighTints()
    {
        if (paper is null || !IsNearWhite())
        {
            return;
        }

        var apart = beside + (2 * clear);
        var last = first - beside - 1;
        var (redGreen, blueGreen) = (new List<float>(), new List<float>());
        for (var i = 0; i < places; i += 2)
        {
            for (var at = 0; at + apart <= last; at += 4)
            {
                var difference = Vector128.Abs(Mean(i, at, beside) - Mean(i, at + apart, beside));
                redGreen.Add(difference[1]);
                blueGreen.Add(difference[2]);
            }
        }

        if (redGreen.Count == 0)
        {
            return;
        }

        var weights = Vector128.Create(1f, Weight(redGreen), Weight(blueGreen), 0);
        Weigh(colours.AsSpan(0, places * count), weights);
        Weigh(sums.AsSpan(0, places * (count + 1)), weights);
        Weigh(paper, weights);

        static float Weight(List<float> differences)
        {
            differences.Sort();
            return Math.Clamp(QuietTint / Math.Max(differences[(int)(0.9f * (differences.Count - 1))] / 1.645f, 1e-4f), 1, MostTintWeight);
        }

        static void Weigh(Span<Vector128<float>> values, Vector128<float> by)
        {
            foreach (ref var value in values)
            {
                value *= by;
            }
        }
    }

    /// <summary>True where most of the innermost places are about as light as paper.</summary>
    private bool IsNearWhite()
    {
        var near = 0;
        for (var i = 0; i < places; i++)
        {
            near += Distance(Mean(i, 0, first / 2), paper![i]) < NearWhite ? 1 : 0;
        }

        return 2 * near > places;
    }

    private static Vector128<float>[]? PaperColours(ProfileSampler sampler, ClosedCurve curve, Separation separation)
    {
        var colours = new Vector128<float>[curve.Points.Length];
        for (var i = 0; i < colours.Length; i++)
        {
            if (sampler.PaperColour(curve.Points[i]) is not { } stored)
            {
                return null;
            }

            colours[i] = separation.Of(stored);
        }

        return colours;
    }

    /// <summary>True where most of the innermost places have a tint that tells them from shadow.</summary>
    private bool IsTinted(Vector128<float>[] raw)
    {
        var (tinted, all) = (0, 0);
        for (var i = 0; i < places; i++)
        {
            for (var k = 0; k < first / 2; k += 2)
            {
                var colour = raw[(i * count) + k];
                tinted += Math.Abs(colour[2] - colour[1]) + Math.Abs(colour[0] - colour[1]) > TintedFace ? 1 : 0;
                all++;
            }
        }

        return 2 * tinted > all;
    }

    /// <summary>The colour of the innermost part of the band, which no wall reaches.</summary>
    private Vector128<float>[] SteadyFaceColours()
    {
        var (light, redGreen, blueGreen) = (new double[places], new double[places], new double[places]);
        for (var i = 0; i < places; i++)
        {
            var own = Mean(i, 0, first / 2);
            (light[i], redGreen[i], blueGreen[i]) = (own[0], own[1], own[2]);
        }

        light = RunningMedian.Of(light, FaceNeighbours);
        redGreen = RunningMedian.Of(redGreen, FaceNeighbours);
        blueGreen = RunningMedian.Of(blueGreen, FaceNeighbours);
        var steady = new Vector128<float>[places];
        for (var i = 0; i < places; i++)
        {
            steady[i] = Vector128.Create((float)light[i], (float)redGreen[i], (float)blueGreen[i], 0);
        }

        return steady;
    }

    private Vector128<float> Mean(int i, int from, int length)
    {
        var low = (i * (count + 1)) + from;
        return (sums[low + length] - sums[low]) * (1f / length);
    }

    private static float Distance(Vector128<float> a, Vector128<float> b) => MathF.Sqrt(Vector128.Dot(a - b, a - b));

    private static float Square(float x) => x * x;

    /// <summary>What blue, green and red add to light and two tints.</summary>
    private readonly record struct Separation(Vector128<float> FromBlue, Vector128<float> FromGreen, Vector128<float> FromRed)
    {
        public Vector128<float> Of(Vector128<float> colour) => (FromBlue * colour[0]) + (FromGreen * colour[1]) + (FromRed * colour[2]);
    }
}
