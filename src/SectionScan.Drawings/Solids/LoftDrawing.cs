using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Solids;
using SectionScan.Porting.Lofts;

namespace SectionScan.Drawings.Solids;

/// <summary>The preview of a lofted port from three sides: from the right, from the roof, and aslant from the entry.</summary>
public static class LoftDrawing
{
    private const double MarginMm = 8;
    private const double GapMm = 14;
    private const double LargestViewMm = 110;
    private const double RingBeforeWallMm = 1.5;
    private const int PlacesBetween = 6;
    private const int RingsBetween = 2;
    private static readonly double[] Scales = [0.5, 1, 1.5, 2];
    private static readonly Pen StationPen = new(Ink.Line, 0.25) { IsRound = true };

    /// <summary>Draws the solid.</summary>
    /// <param name="loft">The solid.</param>
    /// <param name="title">The head line.</param>
    /// <param name="notes">Short lines below it.</param>
    /// <param name="unit">The unit of the scale bar.</param>
    public static Page Build(Loft loft, string title, IReadOnlyList<string> notes, LengthUnit unit)
    {
        ArgumentNullException.ThrowIfNull(loft);
        ArgumentNullException.ThrowIfNull(notes);
        SolidView[] views =
        [
            new("from the right", new(1, 0, 0), new(0, 0, 1)),
            new("from the roof", new(1, 0, 0), new(0, 1, 0)),
            new("aslant, from the entry", Unit(0.45, -0.9, 0), Unit(0.35, 0.18, 1)),
        ];
        var boxes = views.Select(view => view.BoxOf(loft)).ToList();
        var largest = boxes.Max(box => Math.Max(box.Width, box.Height));
        var scale = Scales.LastOrDefault(s => s * largest <= LargestViewMm, LargestViewMm / largest);
        var head = MarginMm + Ink.TitleHeightMm + 3 + (notes.Count * 4.2);
        var rowHeight = boxes.Max(box => box.Height) * scale;
        var width = (2 * MarginMm) + Math.Max(
            boxes.Sum(box => box.Width * scale) + ((boxes.Count - 1) * GapMm), notes.Append(title).Max(text => StrokeFont.WidthMm(text, Ink.TextHeightMm) * 1.4));
        var page = new PageBuilder(width, head + rowHeight + 22 + MarginMm, title) { Layer = "text" };
        page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm), title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        for (var i = 0; i < notes.Count; i++)
        {
            page.Text(new(MarginMm, MarginMm + Ink.TitleHeightMm + 5.2 + (i * 4.2)), notes[i], Ink.TextHeightMm, Ink.Text);
        }

        var left = MarginMm;
        for (var k = 0; k < views.Length; k++)
        {
            var box = boxes[k];
            var origin = new PagePoint(left - (box.Left * scale), head + 4 + (((rowHeight / scale) + box.Height) / 2 * scale) + (box.Bottom * scale));
            Draw(page, loft, views[k], new(origin, scale));
            page.Layer = "text";
            page.Text(new(left + (box.Width * scale / 2), head + rowHeight + 12), views[k].Name, Ink.TextHeightMm, Ink.Text, TextAnchor.Middle);
            left += (box.Width * scale) + GapMm;
        }

        page.Layer = "scale";
        var (barMm, barLabel) = unit == LengthUnit.Inch ? (Inch.Mm, "1 in") : (20, "20 mm");
        DimensionLine.ScaleBar(page, new(MarginMm, page.HeightMm - MarginMm), barMm, scale, string.Create(CultureInfo.InvariantCulture, $"{barLabel}, drawn {scale:0.##}:1"));
        return page.Build();
    }

    private static void Draw(PageBuilder page, Loft loft, SolidView view, SectionView place)
    {
        var items = new List<(double Depth, IReadOnlyList<SpacePoint> Corners, double? Light)>();
        var rings = Enumerable.Range(0, loft.Rings.Count).Where(r => r % RingsBetween == 0 || r == loft.Rings.Count - 1 || IsStation(loft, r)).ToList();
        for (var i = 0; i + 1 < rings.Count; i++)
        {
            var (ring, next) = (loft.Rings[rings[i]].Places, loft.Rings[rings[i + 1]].Places);
            for (var k = 0; k < ring.Count; k += PlacesBetween)
            {
                var to = (k + PlacesBetween) % ring.Count;
                Add([ring[k], next[k], next[to], ring[to]]);
            }
        }

        Add([.. Coarse(loft.Rings[0])]);
        Add([.. Coarse(loft.Rings[^1]).Reverse()]);
        foreach (var ring in loft.Rings.Where((_, r) => IsStation(loft, r)))
        {
            AddRing(ring);
        }

        page.Layer = "solid";
        foreach (var (_, corners, light) in items.OrderBy(item => item.Depth))
        {
            if (light is { } share)
            {
                // The thin line of the same grey closes the hairlines that viewers leave between neighbours.
                var grey = Colour.Grey((byte)(105 + (135 * share)));
                page.Path([Contour(corners, isClosed: true)], grey, new(grey, 0.15) { IsRound = true });
            }
            else
            {
                page.Path([Contour(corners, isClosed: false)], null, StationPen);
            }
        }

        void Add(IReadOnlyList<SpacePoint> corners)
        {
            var normal = (corners[2] - corners[0]).Cross(corners[^1] - corners[1]);
            var toward = normal.Dot(view.Toward) / Math.Max(normal.Length, 1e-12);
            if (toward > 0)
            {
                items.Add((corners.Average(c => c.Dot(view.Toward)), corners, view.LightOn(normal)));
            }
        }

        // The stretches of a station's ring whose wall faces the viewer, a little before the wall itself.
        void AddRing(LoftRing ring)
        {
            var (sin, cos) = Math.SinCos(ring.TurnRad);
            var way = new SpacePoint(cos, 0, -sin);
            for (var k = 0; k < ring.Places.Count; k += PlacesBetween)
            {
                var (from, to) = (ring.Places[k], ring.Places[(k + PlacesBetween) % ring.Places.Count]);
                if (way.Cross(to - from).Dot(view.Toward) >= 0)
                {
                    SpacePoint[] run = [.. Enumerable.Range(k, PlacesBetween + 1).Select(i => ring.Places[i % ring.Places.Count])];
                    items.Add((((from.Dot(view.Toward) + to.Dot(view.Toward)) / 2) + RingBeforeWallMm, run, null));
                }
            }
        }

        Contour Contour(IReadOnlyList<SpacePoint> corners, bool isClosed) => new([.. corners.Select(c => place.ToPage(view.Seen(c)))], isClosed);
    }

    private static bool IsStation(Loft loft, int ring) =>
        loft.Stations.Any(station => Math.Abs(station.DistanceMm - loft.Rings[ring].DistanceMm) < 1e-9);

    private static IEnumerable<SpacePoint> Coarse(LoftRing ring) => ring.Places.Where((_, k) => k % PlacesBetween == 0);

    private static SpacePoint Unit(double x, double y, double z)
    {
        var length = new SpacePoint(x, y, z).Length;
        return new(x / length, y / length, z / length);
    }
}
