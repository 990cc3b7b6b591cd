using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Summaries;

/// <summary>Fills sheets from top to bottom; begins a new one where a piece does not fit.</summary>
internal sealed class PaperFlow(string title, PaperSize paper)
{
    public const double BodyMm = 2.3;
    public const double MostPhotographMm = 108;

    private const double MarginMm = 18;
    private const double FootMm = 14;
    private const double TitleMm = 6.5;
    private const double HeadingMm = 4;
    private const double GapMm = 3.2;

    // A drawing alone in its row is made so much smaller at the most to fit what is left of a sheet.
    private const double LeastShrunk = 0.75;
    private static readonly Pen Rule = new(Colour.Grey(120), 0.2);

    private readonly List<PageBuilder> sheets = [new(paper.WidthMm, paper.HeightMm, title)];
    private double y = MarginMm;

    /// <summary>The width for text, mm.</summary>
    public double WidthMm => paper.WidthMm - (2 * MarginMm);

    /// <summary>The sheet being filled.</summary>
    public PageBuilder Sheet => sheets[^1];

    /// <summary>Where the text begins from the left, mm.</summary>
    public static double LeftMm => MarginMm;

    private double BottomMm => paper.HeightMm - MarginMm - FootMm + 6;

    public void Space(double mm) => y += mm;

    public void Title(string text)
    {
        y += 24;
        foreach (var line in StrokeFont.Wrapped(text, TitleMm, WidthMm))
        {
            Sheet.Text(new(MarginMm, y), line, TitleMm, Ink.Text, isBold: true);
            y += TitleMm * StrokeFont.LineSpacing;
        }

        Sheet.Line(new(MarginMm, y - 4), new(MarginMm + WidthMm, y - 4), Rule);
        y += 6;
    }

    public void Fact(string name, string value)
    {
        const double NameWidthMm = 34;
        Sheet.Text(new(MarginMm, y), name, BodyMm + 0.3, Ink.Faint);
        y = Sheet.Paragraph(new(MarginMm + NameWidthMm, y), value, BodyMm + 0.3, WidthMm - NameWidthMm, Ink.Text) + 1;
    }

    /// <summary>A heading, on a new sheet when it and what begins below it do not fit.</summary>
    public void Heading(string text, double beginningMm)
    {
        Need(HeadingMm + 10 + beginningMm);
        y += y > MarginMm + 1 ? 5 : 0;
        Sheet.Text(new(MarginMm, y + HeadingMm), text, HeadingMm, Ink.Text, isBold: true);
        y += HeadingMm + 1.8;
        Sheet.Line(new(MarginMm, y), new(MarginMm + WidthMm, y), Rule);
        y += 3;
    }

    /// <summary>Begins a new sheet unless a height is left.</summary>
    public void KeepTogether(double mm) => Need(mm);

    public void Paragraph(string text, double capMm = BodyMm)
    {
        foreach (var line in StrokeFont.Wrapped(text, capMm, WidthMm))
        {
            Need(capMm * StrokeFont.LineSpacing);
            Sheet.Text(new(MarginMm, y + capMm), line, capMm, Ink.Text);
            y += capMm * StrokeFont.LineSpacing;
        }

        y += GapMm - 1;
    }

    /// <summary>The height of a paragraph, mm.</summary>
    public double ParagraphMm(string text) => (StrokeFont.Wrapped(text, BodyMm, WidthMm).Count * BodyMm * StrokeFont.LineSpacing) + GapMm - 1;

    public void Note(string text, bool isCaution)
    {
        const double IndentMm = 4;
        var lines = StrokeFont.Wrapped(text, BodyMm, WidthMm - IndentMm - 2);
        var height = lines.Count * BodyMm * StrokeFont.LineSpacing;
        Need(height + GapMm);
        Sheet.Rectangle(MarginMm, y - 0.6, isCaution ? 1.4 : 0.5, height + 0.6, Ink.Line, null);
        foreach (var line in lines)
        {
            Sheet.Text(new(MarginMm + IndentMm, y + BodyMm), line, BodyMm, Ink.Text, isBold: false);
            y += BodyMm * StrokeFont.LineSpacing;
        }

        y += GapMm;
    }

    public void Photograph(ReadOnlyMemory<byte> jpeg, string description, string caption)
    {
        var (widthPx, heightPx) = JpegSize.Of(jpeg.Span);
        var scale = Math.Min(WidthMm / widthPx, MostPhotographMm / heightPx);
        var (width, height) = (widthPx * scale, heightPx * scale);
        Need(height + 10);
        Sheet.Add([new PictureItem(MarginMm, y, width, height, jpeg, description)]);
        y += height + 1.5;
        Paragraph(caption, Ink.SmallHeightMm);
    }

    /// <summary>Drawings side by side, as many as stay readable; none larger than true size. Those of a single row are made a little
    /// smaller rather than put on a new sheet.</summary>
    public void Drawings(IReadOnlyList<Page> drawings, string caption)
    {
        var rows = PaperRows.Of(drawings, WidthMm, BottomMm - MarginMm - 12);
        var captionMm = (StrokeFont.Wrapped(caption, Ink.SmallHeightMm, WidthMm).Count * Ink.SmallHeightMm * StrokeFont.LineSpacing) + 4;
        var left = BottomMm - y - captionMm;
        var shrunk = rows.Rows.Count == 1 && rows.Rows[0].HeightMm > left && rows.Rows[0].HeightMm * LeastShrunk <= left
            ? left / rows.Rows[0].HeightMm
            : 1;
        for (var k = 0; k < rows.Rows.Count; k++)
        {
            var row = rows.Rows[k];

            // The last row takes the caption along.
            Need((row.HeightMm * shrunk) + (k == rows.Rows.Count - 1 ? captionMm : 0));
            for (var i = 0; i < row.Pages.Count; i++)
            {
                var origin = new PagePoint(MarginMm + (i * rows.StepMm), y);
                Sheet.Add(row.Pages[i].Items.Select(item => item.Placed(origin, row.Scales[i] * shrunk)));
            }

            y += (row.HeightMm * shrunk) + 2;
        }

        Paragraph(caption, Ink.SmallHeightMm);
    }

    /// <summary>What the first row of drawings needs at the least, mm.</summary>
    public double BeginningMm(IReadOnlyList<Page> drawings)
    {
        var rows = PaperRows.Of(drawings, WidthMm, BottomMm - MarginMm - 12).Rows;
        return rows.Count == 1 ? (rows[0].HeightMm * LeastShrunk) + 8 : rows[0].HeightMm;
    }

    /// <summary>Takes a strip of a height, on a new sheet when it does not fit; gives its top.</summary>
    /// <param name="mm">The height.</param>
    /// <param name="onNewSheet">What to draw first on a new sheet, such as a table's head.</param>
    public double Take(double mm, Action? onNewSheet = null)
    {
        if (Need(mm))
        {
            onNewSheet?.Invoke();
        }

        var top = y;
        y += mm;
        return top;
    }

    public IReadOnlyList<Page> Finish(string footer)
    {
        for (var i = 0; i < sheets.Count; i++)
        {
            var number = string.Create(CultureInfo.InvariantCulture, $"{i + 1} of {sheets.Count}");
            var foot = paper.HeightMm - FootMm;
            sheets[i].Layer = "foot";
            sheets[i].Line(new(MarginMm, foot - 4), new(MarginMm + WidthMm, foot - 4), Rule);
            sheets[i].Text(new(MarginMm, foot), footer, Ink.SmallHeightMm, Ink.Faint);
            sheets[i].Text(new(MarginMm + WidthMm, foot), number, Ink.SmallHeightMm, Ink.Faint, TextAnchor.End);
        }

        return [.. sheets.Select(sheet => sheet.Build())];
    }

    private bool Need(double mm)
    {
        if (y + mm <= BottomMm || y <= MarginMm + 1)
        {
            return false;
        }

        sheets.Add(new(paper.WidthMm, paper.HeightMm, title));
        y = MarginMm;
        return true;
    }
}
