namespace SectionScan.Imaging.Edges;

/// <summary>One quantity of the photo (light or tint) in which the edge is read.</summary>
internal sealed class EdgeSignal(ProfileSampler sampler, ClosedCurve curve, double[] strips, double flareUncertaintyMm, int direction, bool isTint)
{
    private const double ReachPx = 6.5;
    private const double SearchPx = 3;
    private const double NarrowSearchPx = 1.5;
    private const int BlurSamples = 40;

    // A wall is lit evenly only so far from the face, then darkens toward the paper.
    private const double ShadedBlurs = 4;

    // Colour is stored at half the resolution (4:2:0) and reaches farther.
    private const double TintReachPx = 9;

    // A strip at least this wide (in blurs) is an edge of its own; the wall's level can be read in one a little wider.
    private const double OpenStripBlurs = 5;
    private const double LeastStripBlurs = 0.15;

    // The step from wall to paper may be forty times the one from face to wall: its tail must have died away.
    private const double TailBlurs = 3;
    private const double ResolvedStripBlurs = 2;
    private const double MeltedTintShare = 0.35;

    // An edge read this well needs no help from the foot of the wall.
    private const double PlainEdgePx = 0.12;

    // A reading less sure than this is made again in the mean of this many neighbours to each side.
    private const double FaintPx = 0.15;
    private const int FaintNeighbours = 7;

    // No reading is better than this, whatever the noise says: what the model does not know of tone curve and sharpening.
    private const double LeastUncertaintyPx = 0.03;
    private const double LeastTintUncertaintyPx = 0.15;

    // The wall's level in light is known to 0.06 or so from where it shows wide; in tint it lies between these shares of the face's.
    private const double LightWallFirmness = 0.01;
    private const double TintOfWall = 0.75;
    private const double TintWallSpread = 0.12;
    private const double LeastTintNoise = 0.008;

    // Readings of one profile share most of what the model misses: so many tell as much of a strip's width as one.
    private const double SharedReadings = 25;

    // Noise of light that is always there, so that a perfectly flat profile is not a perfect reading.
    private const double LeastNoise = 0.002;

    private readonly double pixelMm = sampler.MillimetresPerPixel(curve.Points[0]);
    private readonly double reachMm = (isTint ? TintReachPx : ReachPx) * sampler.MillimetresPerPixel(curve.Points[0]);
    private readonly SignalProfiles profiles = new(sampler, curve, direction, isTint);
    private readonly Dictionary<int, EdgeGrid> grids = [];
    private BlurredSteps steps = null!;
    private double[] walls = [];
    private double opticalBlurMm;

    /// <summary>Standard deviation of the blur, mm: the median over the places that show no wall.</summary>
    public double BlurMm { get; private set; }

    /// <summary>Light falls off beside a slice as its shadow does; tint does not.</summary>
    private double SlopeStiffness => isTint ? 1e3 : 1e-3;

    /// <summary>Learns the blur and the wall's levels.</summary>
    /// <param name="knownBlurMm">The blur from an earlier look along the same edge, or 0.</param>
    /// <param name="lightBlurMm">The optical blur as light shows it, mm; 0 for light itself.</param>
    public void Prepare(double knownBlurMm, double lightBlurMm)
    {
        BlurMm = knownBlurMm > 0 ? knownBlurMm : MedianBlurMm();
        opticalBlurMm = lightBlurMm > 0 ? lightBlurMm : BlurMm;
        steps = new(BlurMm, profiles.StepMm);
        grids.Clear();
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
        var profile = profiles.At(i, from, offsetsMm[^1] + strip + reachMm);
        var model = NarrowModel(profile, strip, i);
        var ready = new EdgeProfile(profile, from, new double[BlurredSteps.RoomFor(profile.Length)]);
        var own = new double[offsetsMm.Length];
        for (var k = 0; k < own.Length; k++)
        {
            own[k] = model.LeftOver(ready, offsetsMm[k], out _);
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
        if (reading.StandardUncertaintyMm >= (isTint ? 2 : 1) * FaintPx * pixelMm)
        {
            reading = Read(i, aboutMm, FaintNeighbours);
        }

        return strips[i] > 0 ? reading : reading with { OffsetMm = reading.OffsetMm - (opticalBlurMm * profiles.ShiftInBlurs(i, reading.OffsetMm)) };
    }

    private EdgeReading Read(int i, double aboutMm, int neighbours)
    {
        var strip = strips[i];
        if (strip >= OpenStripBlurs * BlurMm)
        {
            // The face's own edge where the wall differs from the face; else the foot of the wall tells, less surely.
            var edge = Read(i, aboutMm, SearchPx, Math.Min(Math.Min(reachMm, ShadedBlurs * BlurMm), strip - (TailBlurs * BlurMm)), 0, 0, neighbours);
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
        var profile = profiles.Mean(i, from, aboutMm + reachMm + strip + play, neighbours);
        var model = NarrowModel(profile, strip, i);
        var (best, least) = (default((double Offset, double Contrast, double Noise)), double.MaxValue);
        for (var k = -2; k <= 2; k++)
        {
            var width = strip + (0.75 * k * play);
            if (width < LeastStripBlurs * BlurMm)
            {
                continue;
            }

            var fit = EdgeSearch.Minimise(profile, from, model with { StripMm = width }, aboutMm, NarrowSearchPx * pixelMm, pixelMm);
            var noise = Math.Max(fit.Noise, LeastNoise);
            var cost = (fit.Noise * fit.Noise * profile.Length) + (SharedReadings * noise * noise * 0.5625 * k * k);
            if (cost < least)
            {
                (best, least) = (fit, cost);
            }
        }

        return Judge(best, strip, 0.3);
    }

    private EdgeReading Read(
        int i, double aboutMm, double searchPx, double outerMm, double strip, double flareShare, int neighbours)
    {
        var from = aboutMm - reachMm;
        var profile = profiles.Mean(i, from, aboutMm + outerMm, neighbours);
        var model = strip > 0 ? NarrowModel(profile, strip, i) : new(steps, 0, double.NaN, 0, SlopeStiffness);
        var grid = strip > 0 ? null : GridOf(model, profile.Length, searchPx);
        return Judge(EdgeSearch.Minimise(profile, from, model, aboutMm, searchPx * pixelMm, pixelMm, grid), strip, flareShare);
    }

    /// <summary>The grid for profiles without a wall, which begin the reach before the edge: made once for each length.</summary>
    private EdgeGrid GridOf(EdgeModel plain, int count, double searchPx)
    {
        if (!grids.TryGetValue(count, out var grid))
        {
            grid = EdgeSearch.GridOf(plain, count, -reachMm, searchPx * pixelMm, pixelMm);
            grids.Add(count, grid);
        }

        return grid;
    }

    /// <summary>The model of a narrow strip. Of light the wall's level is known from where the strip is wide; of tint, because a wall is
    /// the same rubber as the face, only darker or brighter.</summary>
    private EdgeModel NarrowModel(ReadOnlySpan<float> profile, double strip, int i)
    {
        if (!isTint)
        {
            return new(steps, strip, walls[i], double.IsNaN(walls[i]) ? 0 : LightWallFirmness, SlopeStiffness);
        }

        var end = profile.Length / 5;
        var face = Mean(profile[..end]);
        var ground = Mean(profile[^end..]);
        var spread = Math.Max(TintWallSpread * Math.Abs(face - ground), 0.01);
        return new(steps, strip, ground + (TintOfWall * (face - ground)), LeastTintNoise * LeastTintNoise / (spread * spread), SlopeStiffness);
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

    private EdgeReading Judge((double Offset, double Contrast, double Noise) fit, double strip, double flareShare)
    {
        var least = (isTint ? LeastTintUncertaintyPx : LeastUncertaintyPx) * pixelMm;

        // Bound of the blurred step's least variance: u = (n/C)·√(2√π·σ·step), one reading each step.
        var bound = Math.Max(fit.Noise, LeastNoise) / Math.Max(fit.Contrast, 1e-4) * Math.Sqrt(2 * Math.Sqrt(Math.PI) * BlurMm * profiles.StepMm);
        var flare = flareShare * flareUncertaintyMm * Math.Min(1, strip / (OpenStripBlurs * BlurMm));

        // A wall has the face's tint, only darker: in tint a narrow strip shifts the edge by a share of its width.
        var melted = isTint ? MeltedTintShare * Math.Min(strip, OpenStripBlurs * BlurMm) : 0;
        return new(fit.Offset, Math.Sqrt((least * least) + (4 * bound * bound) + (flare * flare) + (melted * melted)), fit.Contrast);
    }

    private double MedianBlurMm()
    {
        var blurs = new List<(double Blur, double Contrast)>();
        var tried = new List<(double BlurPx, EdgeModel Model, EdgeGrid Grid)>();
        var stride = Math.Max(1, curve.Points.Length / BlurSamples);
        for (var i = 0; i < curve.Points.Length; i += stride)
        {
            if (strips[i] > 0)
            {
                continue;
            }

            var profile = profiles.At(i, -reachMm, reachMm);
            for (var blurPx = 0.6; blurPx <= 5 && blurs.Count == 0; blurPx *= 1.2)
            {
                var model = new EdgeModel(new(blurPx * pixelMm, profiles.StepMm), 0, double.NaN, 0, SlopeStiffness);
                tried.Add((blurPx, model, EdgeSearch.GridOf(model, profile.Length, -reachMm, SearchPx * pixelMm, pixelMm)));
            }

            var (best, contrast, least) = (0.0, 0.0, double.MaxValue);
            foreach (var (blurPx, model, grid) in tried)
            {
                var reading = EdgeSearch.Minimise(profile, -reachMm, model, 0, SearchPx * pixelMm, pixelMm, grid);
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

            var inside = profiles.At(i, 2 * BlurMm, Math.Max((2 * BlurMm) + pixelMm, strips[i] - (2 * BlurMm)));
            Array.Sort(inside);
            levels[i] = inside[inside.Length / 2];
        }

        int[] known = [.. Enumerable.Range(0, n).Where(i => !double.IsNaN(levels[i]))];
        if (known.Length == 0)
        {
            return levels;
        }

        var filled = (double[])levels.Clone();
        var next = 0;
        for (var i = 0; i < n; i++)
        {
            if (double.IsNaN(filled[i]))
            {
                // Round the curve the nearest known place is the last one or the next; of equals the first counts.
                var (behind, ahead) = (known[(next + known.Length - 1) % known.Length], known[next % known.Length]);
                var (back, on) = ((i - behind + n) % n, (ahead - i + n) % n);
                filled[i] = levels[back == on ? Math.Min(behind, ahead) : back < on ? behind : ahead];
            }
            else
            {
                next++;
            }
        }

        return filled;
    }
}
