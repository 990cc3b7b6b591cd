using System.Globalization;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Lengthwise;

namespace SectionScan.Drawings.Lengthwise;

/// <summary>A lengthwise shape on a page.</summary>
/// <param name="view">Where its frame lies on the page.</param>
internal sealed class LengthwiseFigure(SectionView view)
{
    public static readonly Pen WallPen = new(Ink.Line, 0.4) { IsRound = true };
    public static readonly Pen MeasuredPen = new(Colour.Grey(90), 0.25) { IsRound = true, DashesMm = [1.6, 1] };

    /// <summary>The box round shapes, mm.</summary>
    public static OutlineBox BoxOf(params ReadOnlySpan<LengthwiseShape> shapes)
    {
        var points = new List<SectionPoint>();
        foreach (var shape in shapes)
        {
            points.AddRange(shape.Floor.Points);
            points.AddRange(shape.Roof.Points);
        }

        return new(points.Min(p => p.XMm), points.Min(p => p.YMm), points.Max(p => p.XMm), points.Max(p => p.YMm));
    }

    public PagePoint At(SectionPoint place) => view.ToPage(place);

    /// <summary>Floor, roof and both ends as one closed line.</summary>
    public Contour Whole(LengthwiseShape shape) =>
        new([.. shape.Floor.Points.ToArray().Select(At), .. shape.Roof.Points.ToArray().Reverse().Select(At)], IsClosed: true);

    public Contour Line(IEnumerable<SectionPoint> points) => new([.. points.Select(At)], IsClosed: false);

    /// <summary>The centreline with a tick square to it every 10 mm or half inch from the face, numbered.</summary>
    public void Centreline(PageBuilder page, LengthwiseShape shape, bool withHeights, LengthUnit unit)
    {
        page.Layer = "centreline";
        page.Path([Line(shape.Centreline.Select(place => place.Place))], null, Ink.Centre);
        var step = unit == LengthUnit.Inch ? Inch.Mm / 2 : 10;
        for (var at = step; at < shape.LengthMm - 4; at += step)
        {
            var (before, here, after) = (shape.At(at - 1), shape.At(at), shape.At(at + 1));
            var length = before.Place.DistanceTo(after.Place);
            var (nx, ny) = (-(after.Place.YMm - before.Place.YMm) / length, (after.Place.XMm - before.Place.XMm) / length);
            var reach = withHeights ? here.HeightMm / 2 : 1.5;
            page.Line(At(Beside(here, nx, ny, reach)), At(Beside(here, nx, ny, -reach)), withHeights ? Ink.Centre : Ink.Thin);
            var text = !withHeights ? string.Create(CultureInfo.InvariantCulture, $"{new ShownUnits(unit).FromMm(at):0.#}")
                : unit == LengthUnit.Inch ? string.Create(CultureInfo.InvariantCulture, $"{here.HeightMm / Inch.Mm:0.000}")
                : string.Create(CultureInfo.InvariantCulture, $"{here.HeightMm:0.0}");
            page.Text(At(Beside(here, nx, ny, withHeights ? 0.2 * reach : 3)).Moved(0.6, Ink.SmallHeightMm / 2), text, Ink.SmallHeightMm, Ink.Text);
        }
    }

    private static SectionPoint Beside(MedialPlace place, double nx, double ny, double byMm) =>
        new(place.Place.XMm + (byMm * nx), place.Place.YMm + (byMm * ny));
}
