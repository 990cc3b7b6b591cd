using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Sections;

/// <summary>The drawing of one section at true size: outline, centre lines, width and height with uncertainty, scale bar.</summary>
public static class SectionDrawing
{
    private const double MarginMm = 6;
    private const double CentreOverMm = 4;
    private const double DimensionDropMm = 11;
    private const double NoteLineMm = 4.2;
    private const double ScaleBarMm = 20;

    /// <summary>Draws a section. The page is as large as the drawing needs.</summary>
    /// <param name="outline">The outline, mm, section frame.</param>
    /// <param name="caption">What to write; its width and height are written as given, not measured from the outline.</param>
    public static Page Build(Outline outline, SectionCaption caption)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(caption);
        var box = OutlineBox.Of(outline);
        var width = MeasureText.Length(caption.WidthMm, caption.Unit);
        var height = MeasureText.Length(caption.HeightMm, caption.Unit);
        var notes = NotesOf(caption);
        var scaleText = (caption.Unit == LengthUnit.Inch ? "1 in" : "20 mm") + (caption.SaysTrueSize ? ", drawn 1:1" : "");
        var scaleLength = caption.Unit == LengthUnit.Inch ? 25.4 : ScaleBarMm;

        // What the words and the outline with its dimensions need across; the wider one decides.
        var textWidth = notes.Select(note => StrokeFont.WidthMm(note, Ink.TextHeightMm))
            .Append(StrokeFont.WidthMm(caption.Title, Ink.TitleHeightMm))
            .Append(scaleLength + 2 + StrokeFont.WidthMm(scaleText, Ink.SmallHeightMm)).Max();
        var rightRoom = Math.Max(DimensionDropMm + 2, DimensionLine.RunsOverMm(width, box.Width));
        var pageWidth = (2 * MarginMm) + Math.Max(textWidth, CentreOverMm + box.Width + rightRoom);
        var headHeight = MarginMm + Ink.TitleHeightMm + (notes.Count * NoteLineMm) + 3;
        var topRoom = Math.Max(CentreOverMm + 2, DimensionLine.RunsOverMm(height, box.Height));
        var pageHeight = headHeight + topRoom + box.Height + DimensionDropMm + 12 + MarginMm;

        var page = new PageBuilder(pageWidth, pageHeight, caption.Title);
        var view = new SectionView(new(MarginMm + CentreOverMm - box.Left, headHeight + topRoom + box.Top), 1);

        Head(page, caption, notes);
        CentreLines(page, view, box);
        page.Layer = "outline";
        page.Path([view.ToContour(outline)], null, Ink.Outline);
        page.Layer = "dimension";
        var (leftmost, rightmost, lowest, highest) = Extremes(outline);
        var bottom = view.ToPage(new(0, box.Bottom)).YMm;
        DimensionLine.Across(
            page,
            view.ToPage(outline[leftmost]),
            view.ToPage(outline[rightmost]),
            bottom + DimensionDropMm,
            width);
        DimensionLine.Up(
            page,
            view.ToPage(outline[lowest]),
            view.ToPage(outline[highest]),
            view.ToPage(new(box.Right, 0)).XMm + DimensionDropMm,
            height);
        page.Layer = "scale";
        DimensionLine.ScaleBar(page, new(MarginMm, pageHeight - MarginMm), scaleLength, 1, scaleText);
        return page.Build();
    }

    /// <summary>Head line and notes at the top left.</summary>
    internal static void Head(PageBuilder page, SectionCaption caption, IReadOnlyList<string> notes)
    {
        page.Layer = "text";
        var y = MarginMm + Ink.TitleHeightMm;
        page.Text(new(MarginMm, y), caption.Title, Ink.TitleHeightMm, Ink.Text, isBold: true);
        foreach (var note in notes)
        {
            y += NoteLineMm + (y < MarginMm + Ink.TitleHeightMm + 0.1 ? 1 : 0);
            page.Text(new(MarginMm, y), note, Ink.TextHeightMm, Ink.Text);
        }
    }

    private static List<string> NotesOf(SectionCaption caption)
    {
        var notes = new List<string>();
        if (caption.AreaMm2 is { } area)
        {
            notes.Add("Area " + MeasureText.Area(area, caption.Unit));
        }

        notes.AddRange(caption.Notes);
        return notes;
    }

    private static void CentreLines(PageBuilder page, SectionView view, OutlineBox box)
    {
        page.Layer = "centre";
        page.Lines(
            [
                (view.ToPage(new(box.Left - CentreOverMm, 0)), view.ToPage(new(box.Right + CentreOverMm, 0))),
                (view.ToPage(new(0, box.Top + CentreOverMm)), view.ToPage(new(0, box.Bottom - CentreOverMm))),
            ],
            Ink.Centre);
        page.Text(
            view.ToPage(new(0, box.Top)).Moved(1.2, -CentreOverMm + Ink.SmallHeightMm),
            "roof",
            Ink.SmallHeightMm,
            Ink.Faint);
    }

    private static (int Leftmost, int Rightmost, int Lowest, int Highest) Extremes(Outline outline)
    {
        var (leftmost, rightmost, lowest, highest) = (0, 0, 0, 0);
        for (var i = 1; i < outline.Count; i++)
        {
            leftmost = outline[i].XMm < outline[leftmost].XMm ? i : leftmost;
            rightmost = outline[i].XMm > outline[rightmost].XMm ? i : rightmost;
            lowest = outline[i].YMm < outline[lowest].YMm ? i : lowest;
            highest = outline[i].YMm > outline[highest].YMm ? i : highest;
        }

        return (leftmost, rightmost, lowest, highest);
    }
}
