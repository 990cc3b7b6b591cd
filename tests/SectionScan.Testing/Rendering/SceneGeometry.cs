using SectionScan.Metrology.Frames;

namespace SectionScan.Testing.Rendering;

/// <summary>The bodies of a scene and what a ray from the camera meets first.</summary>
internal sealed class SceneGeometry
{
    private const double CellMm = 2;
    private readonly PhotoScene scene;
    private readonly TargetPattern pattern;
    private readonly (SceneTag Tag, double Sin, double Cos, bool[] Bits)[] tags;
    private readonly (SceneOpening Opening, DistanceField Field)[] openings;
    private readonly double cameraX;
    private readonly double cameraY;
    private readonly double cameraH;
    private uint[] cells = [];
    private double cellsLeft;
    private double cellsTop;
    private int cellColumns;
    private int cellRows;

    public SceneGeometry(PhotoScene scene)
    {
        this.scene = scene;
        (cameraX, cameraY, cameraH) = (scene.SensorCamera.FootPoint.XMm, scene.SensorCamera.FootPoint.YMm, scene.SensorCamera.HeightMm);
        pattern = new(scene.Target, scene.PrintRatioX, scene.PrintRatioY);
        IsCasting = scene.Target == SceneTarget.Card;
        BaseMm = IsCasting ? -45 : 0;
        Solids = [.. MakeSolids()];
        tags = [.. scene.Tags.Select(t => (t, Math.Sin(t.Up.Radians), Math.Cos(t.Up.Radians), TargetPattern.TagBits(t.Id)))];
        openings = [.. scene.Openings.Select(o => (o, new DistanceField(Placed(o.Outline, o.Placement), 3)))];
        SortIntoCells();
    }

    /// <summary>Whether the target lies on a casting instead of a table.</summary>
    public bool IsCasting { get; }

    /// <summary>The height of the table.</summary>
    public double BaseMm { get; }

    /// <summary>The casting if there is one, then slices, then obstacles.</summary>
    public Solid[] Solids { get; }

    public int FirstSlice => IsCasting ? 1 : 0;

    public static TargetPoint[] Placed(SectionPoint[] outline, SectionPlacement placement) => Array.ConvertAll(outline, placement.ToTarget);

    public DistanceField OpeningField(int index) => openings[index].Field;

    public SceneOpening Opening(int index) => openings[index].Opening;

    /// <summary>What the ray with these slopes meets first.</summary>
    /// <returns>The element's number.</returns>
    public int Trace(double sx, double sy, out double x, out double y, out double h)
    {
        var fall = cameraH - BaseMm;
        (x, y, h) = (cameraX + (sx * fall), cameraY + (sy * fall), BaseMm);
        var mask = MaskAt(x, y);
        if (mask != 0)
        {
            var (best, bestH) = (-1, double.MinValue);
            for (var k = 0; k < Solids.Length; k++)
            {
                if ((mask & (1u << k)) == 0)
                {
                    continue;
                }

                var toTop = cameraH - Solids[k].TopMm;
                var part = Solids[k].Hit(cameraX + (sx * toTop), cameraY + (sy * toTop), sx, sy, out var hitH);
                if (part != SolidPart.None && hitH > bestH)
                {
                    bestH = hitH;
                    best = (k << 4) | (int)(part switch
                    {
                        SolidPart.Top => SurfaceKind.Top,
                        SolidPart.Wall => SurfaceKind.Wall,
                        SolidPart.Bubble => SurfaceKind.Bubble,
                        _ => SurfaceKind.Burr,
                    });
                }
            }

            if (best >= 0)
            {
                (x, y, h) = (cameraX + (sx * (cameraH - bestH)), cameraY + (sy * (cameraH - bestH)), bestH);
                return IsCasting && best == (int)SurfaceKind.Top ? OnCasting(sx, sy, ref x, ref y, ref h) : best;
            }
        }

        return IsCasting ? (int)SurfaceKind.Table : OnTable(x, y);
    }

    private int OnTable(double x, double y)
    {
        foreach (var (tag, sin, cos, bits) in tags)
        {
            var (dx, dy) = (x - tag.Centre.XMm, tag.Centre.YMm - y);
            if ((dx * dx) + (dy * dy) > 85)
            {
                continue;
            }

            // Into the tag's own frame, x right and y down from the corner of its black square.
            var tx = 5 + (dx * cos) + (dy * sin);
            var ty = 5 - ((dy * cos) - (dx * sin));
            if (tx < -1.5 || ty < -1.5 || tx >= 11.5 || ty >= 11.5)
            {
                continue;
            }

            var inside = tx >= 0 && ty >= 0 && tx < 10 && ty < 10;
            return (int)(inside && !bits[((int)(ty * 0.8) * 8) + (int)(tx * 0.8)] ? SurfaceKind.TagInk : SurfaceKind.TagPaper);
        }

        return (int)(!pattern.IsOnPage(x, y) ? SurfaceKind.Table : pattern.IsInk(x, y) ? SurfaceKind.Ink : SurfaceKind.Paper);
    }

    private int OnCasting(double sx, double sy, ref double x, ref double y, ref double h)
    {
        if (pattern.IsOnPage(x, y))
        {
            return (int)(pattern.IsInk(x, y) ? SurfaceKind.Ink : SurfaceKind.Paper);
        }

        for (var k = 0; k < openings.Length; k++)
        {
            var (opening, field) = openings[k];
            if (field.At(x, y) >= 0)
            {
                continue;
            }

            var rate = Math.Sqrt((sx * sx) + (sy * sy)) + Math.Abs(opening.DraftTangent) + 1e-9;
            double depth = 0;
            for (var n = 0; n < 200 && depth < opening.DepthMm; n++)
            {
                var room = (opening.DraftTangent * depth) - field.At(x + (sx * depth), y + (sy * depth));
                if (room < 1e-4 && depth > 0)
                {
                    break;
                }

                depth += (Math.Max(room, 0) / rate) + 1e-4;
            }

            var isWall = depth < opening.DepthMm;
            depth = Math.Min(depth, opening.DepthMm);
            (x, y, h) = (x + (sx * depth), y + (sy * depth), -depth);
            return (k << 4) | (int)(isWall ? SurfaceKind.CavityWall : SurfaceKind.CavityFloor);
        }

        return (int)SurfaceKind.Top;
    }

    private IEnumerable<Solid> MakeSolids()
    {
        if (IsCasting)
        {
            yield return new(new(CastingShape.For(scene), 4), 0, BaseMm, 0, 0, 0);
        }

        foreach (var slice in scene.Slices)
        {
            var place = slice.Placement;
            yield return new(new(Placed(slice.Outline, place), 3), slice.ThicknessMm, 0, slice.DraftTangent, slice.LeanX, slice.LeanY)
            {
                Bubbles = [.. slice.Bubbles.Select(b => (place.ToTarget(b.At).XMm, place.ToTarget(b.At).YMm, b.RadiusMm))],
                Burrs = [.. slice.Burrs.Select(b =>
                {
                    var (from, to) = (place.ToTarget(b.From), place.ToTarget(b.To));
                    return (from.XMm, from.YMm, to.XMm, to.YMm, b.HalfWidthMm);
                })],
            };
        }

        foreach (var obstacle in scene.Obstacles)
        {
            yield return new(new(obstacle.Outline, 3), obstacle.HeightMm, 0, 0, 0, 0);
        }
    }

    // Which solids can a ray meet that would land in this cell of the table.
    private void SortIntoCells()
    {
        if (Solids.Length == 0)
        {
            return;
        }

        if (Solids.Length > 31)
        {
            throw new ArgumentException("A scene has at most 31 bodies.");
        }

        const double FarMm = 130;
        cellsLeft = Solids.Min(s => s.Top.CentreX - s.ReachMm) - FarMm;
        cellsTop = Solids.Min(s => s.Top.CentreY - s.ReachMm) - FarMm;
        cellColumns = (int)((Solids.Max(s => s.Top.CentreX + s.ReachMm) + FarMm - cellsLeft) / CellMm) + 1;
        cellRows = (int)((Solids.Max(s => s.Top.CentreY + s.ReachMm) + FarMm - cellsTop) / CellMm) + 1;
        cells = new uint[cellColumns * cellRows];
        for (var row = 0; row < cellRows; row++)
        {
            for (var column = 0; column < cellColumns; column++)
            {
                var (px, py) = (cellsLeft + ((column + 0.5) * CellMm), cellsTop + ((row + 0.5) * CellMm));
                var (sx, sy) = ((px - cameraX) / (cameraH - BaseMm), (py - cameraY) / (cameraH - BaseMm));
                for (var k = 0; k < Solids.Length; k++)
                {
                    var s = Solids[k];
                    var rise = s.TopMm - BaseMm;
                    var (ux, uy) = (-sx * rise, -sy * rise);
                    var (vx, vy) = (s.Top.CentreX - px, s.Top.CentreY - py);
                    var along = Math.Clamp(((ux * vx) + (uy * vy)) / ((ux * ux) + (uy * uy) + 1e-12), 0, 1);
                    var (dx, dy) = (vx - (along * ux), vy - (along * uy));

                    // Burrs stand out a little; a cell's half diagonal counts too.
                    var reach = s.ReachMm + CellMm + 2;
                    if ((dx * dx) + (dy * dy) < reach * reach)
                    {
                        cells[(row * cellColumns) + column] |= 1u << k;
                    }
                }
            }
        }
    }

    private uint MaskAt(double x, double y)
    {
        var (cx, cy) = ((x - cellsLeft) / CellMm, (y - cellsTop) / CellMm);
        return cx >= 0 && cy >= 0 && cx < cellColumns && cy < cellRows ? cells[((int)cy * cellColumns) + (int)cx] : 0;
    }
}
