using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Testing.Rendering;

/// <summary>The knobs of a scene to be drawn, at first those of a good photo.</summary>
internal sealed class ScenePlan
{
    private const double WidthAtScale1 = 4032;
    private const double HeightAtScale1 = 3024;

    public ScenePlan(Random random)
    {
        ThicknessMm = PortShapes.Between(random, 5, 8);
        TiltDegrees = PortShapes.Between(random, 0, 6);
        RollDegrees = PortShapes.Between(random, -4, 4);
        Orientation = new[] { 1, 1, 1, 3, 6, 8 }[random.Next(6)];
        Develop = new()
        {
            BlurSigmaPx = PortShapes.Between(random, 0.65, 0.95),
            Sharpening = PortShapes.Between(random, 0.2, 0.5),
            SCurve = PortShapes.Between(random, 0.1, 0.25),
            Exposure = PortShapes.Between(random, 0.9, 1.05),
            Vignette = PortShapes.Between(random, 0.05, 0.3),
            JpegQuality = random.Next(88, 97),
        };
    }

    public int Seed { get; init; }

    public SliceMaterial[] Materials { get; set; } = [SliceMaterial.Blue, SliceMaterial.Green, SliceMaterial.Amber];

    public double ThicknessMm { get; set; }

    public double TiltDegrees { get; set; }

    public double RollDegrees { get; set; }

    public double LookAside { get; set; } = 5;

    public double TurnDegrees { get; set; } = 6;

    public double Draft { get; private set; }

    public double LeanX { get; private set; }

    public double LeanY { get; private set; }

    public double PrintRatioX { get; set; } = 1;

    public double PrintRatioY { get; set; } = 1;

    public int Bubbles { get; set; } = 5;

    public int EdgeBubbles { get; set; } = 1;

    public int Burrs { get; set; }

    public double SawMarks { get; set; } = 0.07;

    public bool HasGlare { get; set; }

    public bool CoversCorner { get; set; }

    public double Scale { get; set; } = 1;

    public int Orientation { get; }

    public SceneLight Light { get; set; } = SceneLight.Soft;

    public DevelopSettings Develop { get; set; }

    public PhotoLabel Label { get; private set; } = new("Example", "Example phone", 26, "2025:06:14 10:30:00");

    public int WidthPx => (int)Math.Round(WidthAtScale1 * Scale);

    public int HeightPx => (int)Math.Round(HeightAtScale1 * Scale);

    /// <summary>Leans the walls: in two of three cases all round, else in one direction.</summary>
    public void Lean(Random random, double tangent)
    {
        if (random.Next(3) != 0)
        {
            Draft = tangent;
            return;
        }

        var (sin, cos) = Math.SinCos(PortShapes.Between(random, 0, Math.Tau));
        (LeanX, LeanY) = (tangent * cos, tangent * sin);
    }

    /// <summary>A slice of the planned kind, not yet laid.</summary>
    public SceneSlice Slice(Random random, int station, SliceMaterial material)
    {
        var outline = PortShapes.Draw(random);
        var bubbles = new List<SceneBubble>();
        for (var k = 0; k < Bubbles; k++)
        {
            var rim = outline[random.Next(outline.Length)];
            var inward = Math.Sqrt(random.NextDouble()) * 0.93;
            bubbles.Add(new(new(rim.XMm * inward, rim.YMm * inward), PortShapes.Between(random, 0.12, 0.5)));
        }

        for (var k = 0; k < EdgeBubbles; k++)
        {
            bubbles.Add(new(outline[random.Next(outline.Length)], PortShapes.Between(random, 0.2, 0.55)));
        }

        var burrs = new List<SceneBurr>();
        for (var k = 0; k < Burrs; k++)
        {
            var root = outline[random.Next(outline.Length)];
            var out1 = 1 + (PortShapes.Between(random, 0.3, 1.0) / Math.Sqrt((root.XMm * root.XMm) + (root.YMm * root.YMm)));
            burrs.Add(new(root, new(root.XMm * out1, root.YMm * out1), PortShapes.Between(random, 0.08, 0.3)));
        }

        return new(station, outline, new(default, Angle.FromDegrees(PortShapes.Between(random, -TurnDegrees, TurnDegrees))), ThicknessMm, material)
        {
            DraftTangent = Draft,
            LeanX = LeanX,
            LeanY = LeanY,
            Bubbles = bubbles,
            Burrs = burrs,
            SawMarks = SawMarks,
            Gloss = 0.35,
        };
    }

    /// <summary>A phone that sees all the given points, as near as it can be.</summary>
    public Camera CameraFor(Random random, TargetPoint[] seen, TargetPoint look, double nearestMm)
    {
        var focal = 3142 * PortShapes.Between(random, 0.92, 1.1) * Scale;
        var bend = PortShapes.Between(random, 0.6, 1.2);
        var lens = new Lens(
            focal,
            focal,
            ((WidthPx - 1) / 2.0) + (PortShapes.Between(random, -25, 25) * Scale),
            ((HeightPx - 1) / 2.0) + (PortShapes.Between(random, -25, 25) * Scale),
            0.095 * bend,
            -0.17 * bend,
            PortShapes.Between(random, -0.0007, 0.0007),
            PortShapes.Between(random, -0.0007, 0.0007),
            0.065 * bend);

        // Phones write the nominal focal length in whole millimetres, a few percent off.
        var nominal = focal * 43.27 / Math.Sqrt((WidthPx * (double)WidthPx) + (HeightPx * (double)HeightPx));
        Label = Label with { FocalLength35Mm = (int)Math.Round(nominal * PortShapes.Between(random, 0.97, 1.01)) };

        var (lookX, lookY) = (look.XMm + PortShapes.Between(random, -LookAside, LookAside), look.YMm + PortShapes.Between(random, -LookAside, LookAside));
        var azimuth = PortShapes.Between(random, 0, 360);
        var spare = PortShapes.Between(random, 1.0, 1.12);
        for (var distance = nearestMm; ; distance *= 1.01)
        {
            var camera = new Camera(lens, CameraPlacing.LookAt(lookX, lookY, distance * spare, TiltDegrees, azimuth, RollDegrees));
            var margin = 0.012 * WidthPx;
            if (seen.All(p => camera.Project(p, 0) is var q && q.X > margin && q.Y > margin && q.X < WidthPx - margin && q.Y < HeightPx - margin))
            {
                return camera;
            }
        }
    }
}
