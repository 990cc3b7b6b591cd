namespace SectionScan.Testing.Rendering;

/// <summary>The light that comes from a place on a surface toward the camera. Plausible, not physical: shadows, contact darkening, texture
/// and glare where a photo has them.</summary>
internal sealed class SceneShader
{
    private readonly PhotoScene scene;
    private readonly SceneGeometry geometry;
    private readonly LightMap map;
    private readonly SceneLamp[] lamps;
    private readonly double[] squaredToCentre;
    private readonly (LinearColour Albedo, double Cos, double Sin)[] faces;
    private readonly (double X, double Y, double H) eye;

    public SceneShader(PhotoScene scene, SceneGeometry geometry)
    {
        (this.scene, this.geometry) = (scene, geometry);
        lamps = [.. scene.Light.Lamps];
        map = new(geometry, lamps);
        eye = (scene.SensorCamera.FootPoint.XMm, scene.SensorCamera.FootPoint.YMm, scene.SensorCamera.HeightMm);
        var (centreX, centreY) = geometry.IsCasting ? (40.0, 10.0) : (130.0, 90.0);
        squaredToCentre = [.. lamps.Select(l => Square(l.XMm - centreX) + Square(l.YMm - centreY) + Square(l.HeightMm))];
        faces = [.. geometry.Solids.Select((_, k) => Face(k))];
        PaperLight = scene.Light.Ambient.G + lamps.Select((l, k) => l.Light.G * (float)(l.HeightMm / Math.Sqrt(squaredToCentre[k]))).Sum();
    }

    /// <summary>The light (green) on unshadowed level paper at the centre of the target.</summary>
    public float PaperLight { get; }

    /// <summary>The reflectance of paper.</summary>
    public static LinearColour Paper { get; } = new(0.82f, 0.82f, 0.80f);

    public LinearColour Shade(int element, double x, double y, double h)
    {
        var (kind, index) = ((SurfaceKind)(element & 15), element >> 4);
        return kind switch
        {
            SurfaceKind.Paper or SurfaceKind.TagPaper => (Level(x, y, h) * Paper * Grain(x, y, 0.008f)) + Glare(x, y, h, 0.25),
            SurfaceKind.Ink or SurfaceKind.TagInk => (Level(x, y, h) * LinearColour.Grey(0.026f) * Grain(x, y, 0.12f)) + Glare(x, y, h, 0.35),
            SurfaceKind.Table => Level(x, y, h) * Table(x, y),
            SurfaceKind.Top or SurfaceKind.Burr => Top(index, x, y, h),
            SurfaceKind.Wall => Wall(index, x, y, h),
            SurfaceKind.Bubble => Bubble(index, x, y, h),
            SurfaceKind.CavityWall or SurfaceKind.CavityFloor => Cavity(index, x, y, h, kind == SurfaceKind.CavityFloor),
            _ => throw new ArgumentOutOfRangeException(nameof(element), element, "No such surface."),
        };
    }

    private static double Square(double v) => v * v;

    private float Grain(double x, double y, float contrast) =>
        1 + (contrast * (Noise.At((x * 9) + scene.Seed, y * 9) + Noise.At(x * 0.7, (y * 0.7) + scene.Seed)));

    // Light on a level surface; on the table the shadows count, above it nothing is in the way.
    private LinearColour Level(double x, double y, double h)
    {
        var onTable = h <= geometry.BaseMm;
        var sum = scene.Light.Ambient * (onTable ? map.Sky(x, y) : 1);
        for (var k = 0; k < lamps.Length; k++)
        {
            var seen = onTable ? map.Seen(k, x, y) : 1;
            if (seen > 0)
            {
                var (lx, ly, lh) = (lamps[k].XMm - x, lamps[k].YMm - y, lamps[k].HeightMm - h);
                var d2 = (lx * lx) + (ly * ly) + (lh * lh);
                sum += lamps[k].Light * (float)(seen * squaredToCentre[k] / d2 * lh / Math.Sqrt(d2));
            }
        }

        return sum;
    }

    private LinearColour Glare(double x, double y, double h, double gloss)
    {
        if (scene.Light.Glare == 0 || gloss == 0)
        {
            return default;
        }

        var sum = default(LinearColour);
        var (vx, vy, vh) = (eye.X - x, eye.Y - y, eye.H - h);
        var v = Math.Sqrt((vx * vx) + (vy * vy) + (vh * vh));
        for (var k = 0; k < lamps.Length; k++)
        {
            var (lx, ly, lh) = (lamps[k].XMm - x, lamps[k].YMm - y, lamps[k].HeightMm - h);
            var l = Math.Sqrt((lx * lx) + (ly * ly) + (lh * lh));
            var (hx, hy, hh) = ((vx / v) + (lx / l), (vy / v) + (ly / l), (vh / v) + (lh / l));
            var cosine = hh / Math.Sqrt((hx * hx) + (hy * hy) + (hh * hh));
            var seen = h <= geometry.BaseMm ? map.Seen(k, x, y) : 1;
            sum += lamps[k].Light * (float)(scene.Light.Glare * gloss * seen * Math.Pow(cosine, 220));
        }

        return sum;
    }

    private LinearColour Top(int index, double x, double y, double h)
    {
        var (albedo, cos, sin) = faces[index];
        var (along, across) = ((x * cos) + (y * sin), (y * cos) - (x * sin));
        var isMetal = geometry.IsCasting && index == 0;
        var slice = SliceOf(index);
        var marks = isMetal ? 0.16 : slice?.SawMarks ?? 0.03;
        var texture = 1 + (marks * ((0.7 * Noise.At(across * 7, (along * 0.25) + scene.Seed)) + (0.4 * Noise.At(across * 1.1, along * 0.12))))
            + (0.05 * Noise.At(x * 0.6, (y * 0.6) + (31 * index))) + (0.02 * Noise.At(x * 8, y * 8));
        return (Level(x, y, h) * albedo * (float)Math.Max(0.05, texture))
            + Glare(x, y, h, isMetal ? 0.5 : slice?.Gloss ?? 0);
    }

    private LinearColour Wall(int index, double x, double y, double h)
    {
        var solid = geometry.Solids[index];
        var depth = solid.TopMm - h;
        var (nx, ny) = solid.Top.OutwardAt(x - (solid.LeanX * depth), y - (solid.LeanY * depth));

        // A wall that spreads toward the base looks up a little; a skew one looks up where it leans out.
        var nh = solid.Draft + (solid.LeanX * nx) + (solid.LeanY * ny);
        var length = Math.Sqrt(1 + (nh * nh));
        var share = Math.Clamp((h - geometry.BaseMm) / (solid.TopMm - geometry.BaseMm), 0, 1);
        var sum = scene.Light.Ambient * (float)((0.26 + (0.10 * share)) * (1 + (0.9 * nh)));
        for (var k = 0; k < lamps.Length; k++)
        {
            var (lx, ly, lh) = (lamps[k].XMm - x, lamps[k].YMm - y, lamps[k].HeightMm - h);
            var d2 = (lx * lx) + (ly * ly) + (lh * lh);
            var cosine = ((nx * lx) + (ny * ly) + (nh * lh)) / (length * Math.Sqrt(d2));
            var bounce = 0.10 * lh / Math.Sqrt(d2);
            var direct = 0.0;
            if (cosine > 0)
            {
                var (c, w) = map.ClearWayToLamp(x, y, h, lamps[k], 0, 0, index);
                direct = cosine * LightMap.Share(c, Math.Max(w, 0.1f));
            }

            sum += lamps[k].Light * (float)((direct + bounce) * squaredToCentre[k] / d2);
        }

        var grain = 1 + (0.06 * Noise.At(h * 3, (x + y) * 3)) + (0.03 * Noise.At((x - y) * 0.8, h));
        return sum * faces[index].Albedo * (float)grain;
    }

    private LinearColour Bubble(int index, double x, double y, double h)
    {
        var depth = geometry.Solids[index].TopMm - h;
        return Level(x, y, h) * faces[index].Albedo * (float)(0.22 + (0.5 * Math.Exp(-3 * depth)));
    }

    private LinearColour Cavity(int index, double x, double y, double h, bool isFloor)
    {
        var (field, opening, depth) = (geometry.OpeningField(index), geometry.Opening(index), -h);
        var radius = field.RadiusMm;
        var sky = isFloor
            ? 0.8 * radius * radius / ((radius * radius) + (depth * depth))
            : 0.35 * (1 - (depth / Math.Sqrt((depth * depth) + (4 * radius * radius))));

        // Light that has found its way in after several reflections comes on top.
        var sum = scene.Light.Ambient * (float)(0.03 + (0.4 * sky));
        var (ox, oy) = field.OutwardAt(x, y);
        for (var k = 0; k < lamps.Length; k++)
        {
            var (lx, ly, lh) = (lamps[k].XMm - x, lamps[k].YMm - y, lamps[k].HeightMm - h);
            var d2 = (lx * lx) + (ly * ly) + (lh * lh);
            var cosine = (isFloor ? lh : -((ox * lx) + (oy * ly)) - (opening.DraftTangent * lh)) / Math.Sqrt(d2);
            if (cosine <= 0)
            {
                continue;
            }

            // Where the way to the lamp passes the plane of the face: inside the opening it is lit, near its edge partly.
            var (ex, ey) = (x + (lx * depth / lh), y + (ly * depth / lh));
            var half = (float)Math.Max(0.05, depth * lamps[k].RadiusMm / lh);
            var seen = LightMap.Share((float)-field.At(ex, ey), half);
            sum += lamps[k].Light * (float)(cosine * seen * squaredToCentre[k] / d2);
        }

        var texture = 1 + (0.25 * Noise.At(x * 1.3, (y * 1.3) + (h * 1.7))) + (0.08 * Noise.At((x * 5) + h, y * 5));
        return sum * LinearColour.Grey(isFloor ? 0.14f : 0.34f) * (float)Math.Max(0.1, texture);
    }

    private LinearColour Table(double x, double y)
    {
        if (geometry.IsCasting)
        {
            return new LinearColour(0.20f, 0.22f, 0.26f) * (float)(1 + (0.12 * Noise.At(x * 0.3, y * 0.3)) + (0.05 * Noise.At(x * 3, y * 3)));
        }

        var bend = y + (2.5 * Noise.At(x * 0.05, (y * 0.15) + scene.Seed));
        var grain = (0.6 * Noise.At(x * 0.12, bend * 1.6)) + (0.35 * Noise.At(x * 0.4, bend * 7));
        return new LinearColour(0.36f, 0.23f, 0.13f) * (float)Math.Max(0.2, 1 + (0.28 * grain));
    }

    private SceneSlice? SliceOf(int index)
    {
        var slice = index - geometry.FirstSlice;
        return slice >= 0 && slice < scene.Slices.Count ? scene.Slices[slice] : null;
    }

    private (LinearColour Albedo, double Cos, double Sin) Face(int index)
    {
        var turn = ((Noise.Hash((uint)index, (uint)scene.Seed, 5) / (double)uint.MaxValue) - 0.5) * 2;
        var albedo = SliceOf(index)?.Material switch
        {
            SliceMaterial.Blue => new LinearColour(0.085f, 0.27f, 0.60f),
            SliceMaterial.Green => new(0.10f, 0.36f, 0.17f),
            SliceMaterial.Amber => new(0.62f, 0.30f, 0.05f),
            SliceMaterial.GreyPlaster => new(0.47f, 0.465f, 0.44f),
            SliceMaterial.BlackRubber => new(0.022f, 0.022f, 0.024f),
            SliceMaterial.Pink => new(0.70f, 0.34f, 0.38f),
            SliceMaterial.NearWhite => new(0.73f, 0.715f, 0.66f),
            _ => geometry.IsCasting && index == 0
                ? new(0.46f, 0.47f, 0.48f)
                : scene.Obstacles[index - geometry.FirstSlice - scene.Slices.Count].Colour,
        };
        return (albedo, Math.Cos((Math.PI / 2) + turn), Math.Sin((Math.PI / 2) + turn));
    }
}
