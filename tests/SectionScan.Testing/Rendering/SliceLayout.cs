using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Testing.Rendering;

/// <summary>Lays slices and their tags side by side in the window of the sheet, as a person would: none touches another, none hides a tag
/// from the camera.</summary>
internal static class SliceLayout
{
    private const double TagReachMm = 6.5;

    /// <summary>Places as many of the slices as fit, from the left; their placements' origins are chosen here, their turn is kept.</summary>
    public static (List<SceneSlice> Slices, List<SceneTag> Tags) Lay(
        Random random, IEnumerable<SceneSlice> slices, Camera camera, double ratioX, double ratioY, double mostTagErrorDegrees)
    {
        var (left, right, top, bottom) = (40 * ratioX, 220 * ratioX, 40 * ratioY, 140 * ratioY);
        var (laid, tags) = (new List<SceneSlice>(), new List<SceneTag>());
        var (x, used) = (left + 3, left);
        foreach (var slice in slices)
        {
            var thick = slice.ThicknessMm;
            var foot = camera.FootPoint;

            // How far the face is moved in the picture at the worst end of the window, per mm of thickness.
            var slope = (Math.Max(Math.Abs(left - foot.XMm), Math.Abs(right - foot.XMm)) / camera.HeightMm,
                Math.Max(Math.Abs(top - foot.YMm), Math.Abs(bottom - foot.YMm)) / camera.HeightMm);
            var up = slice.Placement.Up;
            var shape = SceneGeometry.Placed(slice.Outline, new(default, up));
            var spread = thick * (Math.Max(0, slice.DraftTangent) + Math.Abs(slice.LeanX) + Math.Abs(slice.LeanY));

            // The tag lies below the slice in the slice's own sense of below.
            var (sin, cos) = Math.SinCos(up.Radians);
            var below = -slice.Outline.Min(p => p.YMm) + TagReachMm + 2.5 + spread
                + (0.8 * thick * ((Math.Abs(sin) * slope.Item1) + (Math.Abs(cos) * slope.Item2)));
            var (tagX, tagY) = (sin * below, cos * below);
            const double TagRoomMm = TagReachMm * 1.5;
            var boxLeft = Math.Min(shape.Min(p => p.XMm) - spread, tagX - TagRoomMm);
            var boxRight = Math.Max(shape.Max(p => p.XMm) + spread, tagX + TagRoomMm);
            var boxTop = Math.Min(shape.Min(p => p.YMm) - spread, tagY - TagRoomMm);
            var boxBottom = Math.Max(shape.Max(p => p.YMm) + spread, tagY + TagRoomMm);

            var parallax = thick * slope.Item1;
            var centreX = x - boxLeft + (laid.Count == 0 ? parallax : 0.8 * parallax);
            var room = bottom - 2 - boxBottom - (top + 3 + (thick * slope.Item2) - boxTop);
            if (centreX + boxRight + parallax + 2 > right || room < 0)
            {
                continue;
            }

            var centreY = bottom - 2 - boxBottom - (room * random.NextDouble());
            var placed = slice with { Placement = new(new(centreX, centreY), up) };
            laid.Add(placed);
            if (slice.Station is { } station)
            {
                var error = Angle.FromDegrees(mostTagErrorDegrees * ((2 * random.NextDouble()) - 1));
                tags.Add(new(station, new(centreX + tagX, centreY + tagY), up + error));
            }

            x = centreX + boxRight + 4 + (3 * random.NextDouble());
            used = centreX + boxRight + parallax + 2;
        }

        // What is left of the window's width is shared out.
        var spare = (right - used) * random.NextDouble();
        if (spare <= 0)
        {
            return (laid, tags);
        }

        return (
            laid.ConvertAll(s => s with { Placement = s.Placement with { Origin = Moved(s.Placement.Origin) } }),
            tags.ConvertAll(t => t with { Centre = Moved(t.Centre) }));

        TargetPoint Moved(TargetPoint p) => new(p.XMm + spare, p.YMm);
    }
}
