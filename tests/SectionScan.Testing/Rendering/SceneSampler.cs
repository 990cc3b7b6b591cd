using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Testing.Rendering;

/// <summary>Draws scenes: one hard thing at a time by name, or several at once. The same number gives the same scene.</summary>
public static class SceneSampler
{
    /// <summary>A scene of a family, 4032 × 3024 unless the family says otherwise.</summary>
    public static PhotoScene SceneFor(HardCase kind, int seed)
    {
        // Families must not share their draws: mix both numbers well.
        var random = new Random((int)(Noise.Hash((uint)kind, (uint)seed, 77) >> 1));
        var plan = new ScenePlan(random) { Seed = seed };
        Harden(plan, kind, random);
        var scene = kind is HardCase.LitOpening or HardCase.CardAskew ? CardScene(plan, random) : SheetScene(plan, random);
        return scene with { Name = FormattableString.Invariant($"{kind} {seed}") };
    }

    /// <summary>A sheet with a random material, light and pose and up to three more of the hard things at once.</summary>
    public static PhotoScene Sample(int seed)
    {
        var random = new Random((int)(Noise.Hash(991, (uint)seed, 78) >> 1));
        var plan = new ScenePlan(random) { Seed = seed };
        HardCase[] materials =
        [
            HardCase.Plain, HardCase.Plain, HardCase.GreyPlaster, HardCase.BlackRubber, HardCase.PinkSilicone, HardCase.NearWhiteSilicone,
        ];
        HardCase[] lights = [HardCase.Plain, HardCase.StrongGradient, HardCase.HardShadow, HardCase.SoftShadow];
        HardCase[] others =
        [
            HardCase.WallsLeanInward, HardCase.WallsLeanOutward, HardCase.ThickFarFromAxis, HardCase.CoveredCorner, HardCase.PrintRatio,
            HardCase.TurnedSlices, HardCase.BubblesAndBurrs,
        ];
        Harden(plan, materials[random.Next(materials.Length)], random);
        Harden(plan, lights[random.Next(lights.Length)], random);
        for (var n = random.Next(4); n > 0; n--)
        {
            Harden(plan, others[random.Next(others.Length)], random);
        }

        plan.TiltDegrees = Math.Max(plan.TiltDegrees, Between(random, 0, 15));
        return SheetScene(plan, random) with { Name = FormattableString.Invariant($"Sample {seed}") };
    }

    private static double Between(Random random, double from, double to) => PortShapes.Between(random, from, to);

    private static double Signed(Random random, double from, double to) => random.Next(2) == 0 ? Between(random, from, to) : -Between(random, from, to);

    private static void Harden(ScenePlan plan, HardCase kind, Random random)
    {
        switch (kind)
        {
            case HardCase.GreyPlaster:
                plan.Materials = [SliceMaterial.GreyPlaster];
                break;
            case HardCase.BlackRubber:
                plan.Materials = [SliceMaterial.BlackRubber];
                break;
            case HardCase.PinkSilicone:
                plan.Materials = [SliceMaterial.Pink];
                break;
            case HardCase.NearWhiteSilicone:
                plan.Materials = [SliceMaterial.NearWhite];
                break;
            case HardCase.WallsLeanInward:
                plan.Lean(random, -Between(random, 0.03, 0.09));
                break;
            case HardCase.WallsLeanOutward:
                plan.Lean(random, Between(random, 0.03, 0.09));
                break;
            case HardCase.ThickFarFromAxis:
                plan.ThicknessMm = Between(random, 10, 15);
                plan.TiltDegrees = Between(random, 12, 20);
                plan.LookAside = 14;
                break;
            case HardCase.StrongGradient:
                plan.Light = Lighting.StrongGradient(random);
                break;
            case HardCase.HardShadow:
                plan.Light = Lighting.HardShadow(random);
                break;
            case HardCase.SoftShadow:
                plan.Light = Lighting.SoftShadow(random);
                break;
            case HardCase.Glare:
                plan.HasGlare = true;
                break;
            case HardCase.Blur:
                plan.Develop = plan.Develop with
                {
                    BlurSigmaPx = Between(random, 1.6, 2.4),
                    MotionPx = Between(random, 1, 5),
                    MotionDegrees = Between(random, 0, 180),
                };
                break;
            case HardCase.Noise:
                plan.Develop = plan.Develop with { ShotNoise = Between(random, 0.025, 0.05), ReadNoise = Between(random, 0.004, 0.008), JpegQuality = 85 };
                break;
            case HardCase.CoveredCorner:
                plan.CoversCorner = true;
                break;
            case HardCase.TwentyFourMegapixels:
                plan.Scale = 5664.0 / 4032;
                break;
            case HardCase.PrintRatio:
                (plan.PrintRatioX, plan.PrintRatioY) = (1 + Signed(random, 0.005, 0.015), 1 + Signed(random, 0.005, 0.015));
                break;
            case HardCase.TurnedSlices:
                plan.TurnDegrees = 180;
                break;
            case HardCase.BubblesAndBurrs:
                (plan.Bubbles, plan.EdgeBubbles, plan.Burrs, plan.SawMarks) = (18, 4, 5, 0.16);
                break;
            case HardCase.LitOpening:
                plan.Light = Lighting.IntoOpenings(random);
                break;
            case HardCase.CardAskew:
                (plan.TurnDegrees, plan.TiltDegrees, plan.RollDegrees) = (30, Between(random, 4, 15), Signed(random, 8, 25));
                break;
            default:
                break;
        }
    }

    private static PhotoScene SheetScene(ScenePlan plan, Random random)
    {
        var (rx, ry) = (plan.PrintRatioX, plan.PrintRatioY);
        TargetPoint[] seen = [new(0, 0), new(260 * rx, 0), new(0, 180 * ry), new(260 * rx, 180 * ry)];
        var camera = plan.CameraFor(random, seen, new(130, 90), 235);
        var stations = random.Next(1, 20);
        var material = plan.Materials[random.Next(plan.Materials.Length)];
        var drawn = Enumerable.Range(0, 5).Select(k => plan.Slice(random, stations + k, material)).ToArray();
        var (slices, tags) = SliceLayout.Lay(random, drawn, camera, rx, ry, 5);
        return new(SceneTarget.Sheet, camera, plan.WidthPx, plan.HeightPx, plan.Seed)
        {
            Orientation = plan.Orientation,
            PrintRatioX = rx,
            PrintRatioY = ry,
            Slices = slices,
            Tags = tags,
            Obstacles = plan.CoversCorner ? [Obstacle(random, seen)] : [],
            Light = plan.HasGlare ? Lighting.Glare(random, camera) : plan.Light,
            Develop = plan.Develop,
            Label = plan.Label,
        };
    }

    private static PhotoScene CardScene(ScenePlan plan, Random random)
    {
        var count = random.Next(1, 3);
        var openings = new List<SceneOpening>();
        for (var k = 0; k < count; k++)
        {
            var outline = PortShapes.Draw(random, 24, 36);
            var up = Angle.FromDegrees(Signed(random, 0, plan.TurnDegrees));
            var reach = outline.Max(p => Math.Sqrt((p.XMm * p.XMm) + (p.YMm * p.YMm)));
            var x = count == 1 ? Between(random, 25, 55) : (k * 50) + Between(random, 13, 17);
            openings.Add(new(
                outline, new(new(x, -12 - reach - Between(random, 0, 5)), up), Between(random, 20, 30), Between(random, -0.08, 0.06)));
        }

        var top = openings.SelectMany(o => SceneGeometry.Placed(o.Outline, o.Placement)).Min(p => p.YMm) - 6;
        var camera = plan.CameraFor(random, [new(-8, top), new(88, top), new(-8, 58), new(88, 58)], new(40, (top + 55) / 2), 115);
        return new(SceneTarget.Card, camera, plan.WidthPx, plan.HeightPx, plan.Seed)
        {
            Orientation = plan.Orientation,
            Openings = openings,
            Light = plan.Light,
            Develop = plan.Develop,
            Label = plan.Label,
        };
    }

    private static SceneObstacle Obstacle(Random random, TargetPoint[] corners)
    {
        var corner = corners[random.Next(4)];
        var (towardX, towardY) = (corner.XMm > 100 ? -1 : 1, corner.YMm > 80 ? -1 : 1);

        // From beyond the page to 25 to 50 mm into the pattern, but not into the window.
        var (inX, inY) = (towardX * Between(random, 24, 36), towardY * Between(random, 24, 36));
        var (outX, outY) = (-towardX * 30, -towardY * 25);
        TargetPoint At(double x, double y) => new(corner.XMm + x, corner.YMm + y);
        return new([At(outX, outY), At(inX, outY), At(inX, inY), At(outX, inY)], Between(random, 4, 14), new(0.20f, 0.19f, 0.21f));
    }
}
