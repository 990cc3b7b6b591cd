namespace SectionScan.Imaging.Edges;

/// <summary>One quantity of the photo (light or tint) in which the edge is read.</summary>
internal sealed class EdgeSignal(ProfileSampler sampler, ClosedCurve curve, double[] strips, double flareUncertaintyMm, int direction, bool isTint)
{
    private const double StepPx = 0.5;
    private const double ReachPx = 6.5;
    private const double SearchPx = 3;
    private const double NarrowSearchPx = 1.5;
    private const int BlurSamples = 40;

    // Colour is stored at half the resolution (4:2:0) and reaches farther.
    private const double TintReachPx = 9;

    // A strip at least this wide (in blurs) is an edge of its own; the wall's level can be read in one a little wider.
    private const double OpenStripBlurs = 5;
    private const double LeastStripBlurs = 0.15;
    private const double ResolvedStripBlurs = 2;
    private const double MeltedTintShare = 0.35;

    // An edge read this well needs no help from the foot of the wall.
    private const double PlainEdgePx = 0.12;

    // A reading less sure than this is made again in the mean of this many neighbours to each side.
    private const double FaintPx = 0.15;
    private const int FaintNeighbours = 7;

    // No reading is better than this, whatever the noise says: what the model does not know of tone curve and sharpening.
    private const double LeastUncertaintyPx = 0.03;
    private const double LeastTintUncertaintyPx = 0.25;

    // The wall's level in light is known to 0.06 or so from where it shows wide; in tint it lies between these shares of the face's.
    private const double LightWallFirmness = 0.01;
    private const double TintOfWall = 0.75;
    private const double TintWallSpread = 0.12;
    private const double LeastTintNoise = 0.008;

    // Noise of light that is always there, so that a perfectly flat profile is not a perfect reading.
    private const double LeastNoise = 0.002;

    private readonly double pixelMm = sampler.MillimetresPerPixel(curve.Points[0]);
    private readonly double reachMm = (isTint ? TintReachPx : ReachPx) * sampler.MillimetresPerPixel(curve.Points[0]);
    private double[] walls = [];

    /// <summary>Standard deviation of the blur, mm: the median over the places that show no wall.</summary>
    public double BlurMm { get; private set; }

    /// <summary>Learns the blur and the wall's levels.</summary>
    /// <param name="knownBlurMm">The blur from an earlier look along the same edge, or 0.</param>
    public void Prepare(double knownBlurMm)
    {
        BlurMm = knownBlurMm > 0 ? knownBlurMm : MedianBlurMm();
        walls = WallLevels();
    }

    /// <summary>True where a strip of wall shows that is too narrow to be an edge of its own.</summary>
    public bool ShowsNarrowStrip(int i) => strips[i] > LeastStripBlurs * BlurMm && strips[i] < OpenStripBlurs * BlurMm;

    /// <summary>How badly each place of a grid fits as the face's edge, in units of the noise, where a narrow strip shows.</summary>
    /// <param name="i">The place along the outline.</param>
    /// <param name="offsetsMm">The grid, mm along the outward normal.</param>
    /// <param name="misfits">Added to: one for each of the grid.</param>
    public void AddMisfits(int i, double[] offsetsMm, double[] misfits)
    {
        var strip = strips[i];
        var from = offsetsMm[0] - reachMm;
        var profile = Profile(i, from, offsetsMm[^1] + strip + reachMm, out var step);
        var model = NarrowModel(profile, strip, i);
        Span<double> levels = stackalloc double[4];
        var own = new double[offsetsMm.Length];
        for (var k = 0; k < own.Length; k++)
        {
            own[k] = model.LeftOver(profile, from, step, offsetsMm[k], levels);
        }

        var noise = Math.Max(own.Min() / profile.Length, LeastNoise * LeastNoise);
        for (var k = 0; k < own.Length; k++)
        {
            misfits[k] += own[k] / noise;
        }
    }

    /// <summary>Reads one place; where the edge is faint, in the mean of its neighbours' profiles.</summary>
    /// <param name="i">The place along the outline.</param>
    /// <param name="aboutMm">Where the edge is about, along the outward normal.</param>
    public EdgeReading Read(int i, double aboutMm)
    {
        var reading = Read(i, aboutMm, 0);
        return reading.StandardUncertaintyMm < (isTint ? 2 : 1) * FaintPx * pixelMm ? reading : Read(i, aboutMm, FaintNeighbours);
    }

    private EdgeReading Read(int i, double aboutMm, int neighbours)
    {
        var strip = strips[i];
        if (strip >= OpenStripBlurs * BlurMm)
        {
            // The face's own edge where the wall differs from the face; else the foot of the wall tells, less surely.
            var edge = Read(i, aboutMm, SearchPx, Math.Min(reachMm, strip - (1.5 * BlurMm)), 0, 0, neighbours);
            return edge.StandardUncertaintyMm < PlainEdgePx * pixelMm
                ? edge
                : edge.With(Read(i, aboutMm, SearchPx, reachMm + strip, strip, 1, neighbours));
        }

        return strip <= LeastStripBlurs * BlurMm ? Read(i, aboutMm, SearchPx, reachMm, 0, 0, neighbours)
            : strip <= ResolvedStripBlurs * BlurMm ? Read(i, aboutMm, NarrowSearchPx, reachMm + strip, strip, 1, neighbours)
            : ReadResolved(i, aboutMm, strip, neighbours);
    }

    /// <summary>A strip that is seen, if narrowly, tells its own width: the one that leaves least, held to what is known of the flare.</summary>
    private EdgeReading ReadResolved(int i, double aboutMm, double strip, int neighbours)
    {
        var play = Math.Max(flareUncertaintyMm, 0.03);
        var from = aboutMm - reachMm;
        var profile = Profile(i, from, aboutMm + reachMm + strip + play, neighbours, out var step);
        var model = NarrowModel(profile, strip, i);
        var (best, least) = (default((double Offset, double Contrast, double Noise)), double.MaxValue);
        for (var k = -2; k <= 2; k++)
        {
            var width = strip + (0.75 * k * play);
            if (width < LeastStripBlurs * BlurMm)
            {
                continue;
            }

            var fit = Minimise(profile, from, step, model with { StripMm = width }, aboutMm, NarrowSearchPx);
            var cost = (fit.Noise * fit.Noise * profile.Length) + (LeastNoise * LeastNoise * 0.5625 * k * k);
            if (cost < least)
            {
                (best, least) = (fit, cost);
            }
        }

        return Judge(best, strip, step, 0.3);
    }

    private EdgeReading Read(
        int i, double aboutMm, double searchPx, double outerMm, double strip, double flareShare, int neighbours)
    {
        var from = aboutMm - reachMm;
        var profile = Profile(i, from, aboutMm + outerMm, neighbours, out var step);
        var model = strip > 0 ? NarrowModel(profile, strip, i) : new(BlurMm, 0, double.NaN, 0);
        return Judge(Minimise(profile, from, step, model, aboutMm, searchPx), strip, step, flareShare);
    }

    /// <summary>The mean of the profiles of a place and its neighbours to each side: along the smooth course of the outline the edge is
    /// alike, noise and grain are not.</summary>
    private float[] Profile(int i, double from, double to, int neighbours, out double step)
    {
        var mean = Profile(i, from, to, out step);
        if (neighbours == 0)
        {
            return mean;
        }

        var n = curve.Points.Length;
        var total = 1f;
        for (var k = 1; k <= neighbours; k++)
        {
            var weight = 1 - ((float)k / (neighbours + 1));
            foreach (var at in new[] { (i + k) % n, (i - k + n) % n })
            {
                var other = Profile(at, from, to, out _);
                for (var j = 0; j < mean.Length; j++)
                {
                    mean[j] += weight * other[j];
                }

                total += weight;
            }
        }

        for (var j = 0; j < mean.Length; j++)
        {
            mean[j] /= total;
        }

        return mean;
    }

    /// <summary>The model of a narrow strip. Of light the wall's level is known from where the strip is wide; of tint, because a wall is
    /// the same rubber as the face, only darker or brighter.</summary>
    private EdgeModel NarrowModel(ReadOnlySpan<float> profile, double strip, int i)
    {
        if (!isTint)
        {
            return new(BlurMm, strip, walls[i], double.IsNaN(walls[i]) ? 0 : LightWallFirmness);
        }

        var end = profile.Length / 5;
        var face = Mean(profile[..end]);
        var ground = Mean(profile[^end..]);
        var spread = Math.Max(TintWallSpread * Math.Abs(face - ground), 0.01);
        return new(BlurMm, strip, ground + (TintOfWall * (face - ground)), LeastTintNoise * LeastTintNoise / (spread * spread));
    }

    private static double Mean(ReadOnlySpan<float> values)
    {
        double sum = 0;
        foreach (var value in values)
        {
            sum += value;
        }

        return sum / values.Length;
    }

    private EdgeReading Judge((double Offset, double Contrast, double Noise) fit, double strip, double step, double flareShare)
    {
        var least = (isTint ? LeastTintUncertaintyPx : LeastUncertaintyPx) * pixelMm;

        // Bound of the blurred step's least variance: u = (n/C)·√(2√π·σ·step), one reading each step.
        var bound = Math.Max(fit.Noise, LeastNoise) / Math.Max(fit.Contrast, 1e-4) * Math.Sqrt(2 * Math.Sqrt(Math.PI) * BlurMm * step);
        var flare = flareShare * flareUncertaintyMm * Math.Min(1, strip / (OpenStripBlurs * BlurMm));

        // A wall has the face's tint, only darker: in tint a narrow strip shifts the edge by a share of its width.
        var melted = isTint ? MeltedTintShare * Math.Min(strip, OpenStripBlurs * BlurMm) : 0;
        return new(fit.Offset, Math.Sqrt((least * least) + (4 * bound * bound) + (flare * flare) + (melted * melted)), fit.Contrast);
    }

    private (double Offset, double Contrast, double Noise) Minimise(
        ReadOnlySpan<float> profile, double from, double step, EdgeModel model, double about, double searchPx)
    {
        Span<double> levels = stackalloc double[4];
        var (low, high) = (about - (searchPx * pixelMm), about + (searchPx * pixelMm));
        var (best, least) = (about, double.MaxValue);
        var grid = 0.75 * pixelMm;
        for (var s = low; s <= high + 1e-9; s += grid)
        {
            var left = model.LeftOver(profile, from, step, s, levels);
            if (left < least)
            {
                (best, least) = (s, left);
            }
        }

        for (var round = 0; round < 2; round++)
        {
            // The sum of squares is a parabola near its least.
            var (a, c) = (model.LeftOver(profile, from, step, best - grid, levels), model.LeftOver(profile, from, step, best + grid, levels));
            var bend = a - (2 * least) + c;
            if (bend <= 0)
            {
                break;
            }

            var moved = best + Math.Clamp(0.5 * grid * (a - c) / bend, -grid, grid);
            var there = model.LeftOver(profile, from, step, moved, levels);
            if (there > least)
            {
                break;
            }

            (best, least) = (moved, there);
            grid *= 0.3;
        }

        model.LeftOver(profile, from, step, best, levels);
        var contrast = Math.Abs(levels[0] - levels[1]);
        if (model.StripMm > 0)
        {
            contrast = Math.Max(contrast, Math.Abs(levels[0] - levels[3]));
        }

        return (best, contrast, Math.Sqrt(least / profile.Length));
    }

    private float[] Profile(int i, double from, double to, out double step)
    {
        step = StepPx * pixelMm;
        var count = Math.Max(8, (int)Math.Round((to - from) / step) + 1);
        var n = curve.Normals[i];
        var outward = (n.X * direction, n.Y * direction);
        var profile = new float[count];
        if (!isTint)
        {
            sampler.ReadLight(curve.Points[i], outward, from, step, profile);
            return profile;
        }

        // Along the line of tints from the face's to the ground's.
        var tints = new float[2 * count];
        sampler.ReadTint(curve.Points[i], outward, from, step, tints);
        var third = count / 3;
        float x = 0, y = 0;
        for (var k = 0; k < third; k++)
        {
            x += tints[2 * (count - 1 - k)] - tints[2 * k];
            y += tints[(2 * (count - 1 - k)) + 1] - tints[(2 * k) + 1];
        }

        var length = MathF.Sqrt((x * x) + (y * y));
        var (ux, uy) = length > 0 ? (x / length, y / length) : (1f, 0f);
        for (var k = 0; k < count; k++)
        {
            profile[k] = (ux * tints[2 * k]) + (uy * tints[(2 * k) + 1]);
        }

        return profile;
    }

    private double MedianBlurMm()
    {
        var blurs = new List<(double Blur, double Contrast)>();
        var stride = Math.Max(1, curve.Points.Length / BlurSamples);
        for (var i = 0; i < curve.Points.Length; i += stride)
        {
            if (strips[i] > 0)
            {
                continue;
            }

            var profile = Profile(i, -reachMm, reachMm, out var step);
            var (best, contrast, least) = (0.0, 0.0, double.MaxValue);
            for (var blurPx = 0.6; blurPx <= 5; blurPx *= 1.2)
            {
                var reading = Minimise(profile, -reachMm, step, new(blurPx * pixelMm, 0, double.NaN, 0), 0, SearchPx);
                if (reading.Noise < least)
                {
                    (best, contrast, least) = (blurPx, reading.Contrast, reading.Noise);
                }
            }

            blurs.Add((best, contrast));
        }

        if (blurs.Count == 0)
        {
            return (isTint ? 1.6 : 1.1) * pixelMm;
        }

        var clear = blurs.OrderByDescending(b => b.Contrast).Take((blurs.Count + 1) / 2).Select(b => b.Blur).Order().ToArray();
        return clear[clear.Length / 2] * pixelMm;
    }

    /// <summary>The wall's level at each place: read where the strip is open, taken from the nearest such place elsewhere.</summary>
    private double[] WallLevels()
    {
        var n = curve.Points.Length;
        var levels = new double[n];
        Array.Fill(levels, double.NaN);
        if (isTint)
        {
            // The line of tints differs from place to place, so one place's level says nothing of another's.
            return levels;
        }

        for (var i = 0; i < n; i++)
        {
            if (strips[i] < OpenStripBlurs * BlurMm)
            {
                continue;
            }

            var inside = Profile(i, 2 * BlurMm, Math.Max((2 * BlurMm) + pixelMm, strips[i] - (2 * BlurMm)), out _);
            Array.Sort(inside);
            levels[i] = inside[inside.Length / 2];
        }

        var known = Enumerable.Range(0, n).Where(i => !double.IsNaN(levels[i])).ToArray();
        if (known.Length == 0)
        {
            return levels;
        }

        var filled = (double[])levels.Clone();
        for (var i = 0; i < n; i++)
        {
            if (double.IsNaN(filled[i]))
            {
                var nearest = known.MinBy(k => Math.Min((k - i + n) % n, (i - k + n) % n));
                filled[i] = levels[nearest];
            }
        }

        return filled;
    }
}
