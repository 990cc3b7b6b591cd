using System.Globalization;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Summaries;

/// <summary>Sets a summary page on sheets of paper, for PDF: the same content as <see cref="SummaryWriter"/> writes for a browser. Pictures
/// and links belong to the browser and are named only.</summary>
public static class SummaryPages
{
    private const double MarginMm = 18;
    private const double TitleHeightMm = 5;
    private const double HeadingHeightMm = 3.6;
    private const double TextHeightMm = 2.5;
    private const double CellGapMm = 4;
    private const double BlockGapMm = 4;

    private static readonly Colour NoteFill = new(238, 243, 249);
    private static readonly Colour CautionFill = new(253, 241, 228);
    private static readonly Pen Rule = new(Colour.Grey(190), 0.15);
    private static readonly Pen HeadRule = new(Ink.Line, 0.25);

    /// <summary>Sets the page; a new sheet is begun whenever one is full.</summary>
    public static IReadOnlyList<Page> Build(SummaryPage summary, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(summary);
        ArgumentNullException.ThrowIfNull(paper);
        var setter = new Setter(paper, summary.Title, summary.Footer);
        setter.Text(summary.Title, TitleHeightMm, isBold: true);
        setter.Space(2);
        setter.Text(summary.Introduction, TextHeightMm);
        foreach (var section in summary.Sections)
        {
            // A heading stays with a few lines, and with a drawing that follows soon.
            setter.Room(HeadingHeightMm + 24 + section.Blocks.Take(2).OfType<DrawingBlock>().Sum(block => setter.HeightOf(block.Drawings[0])));
            setter.Space(BlockGapMm);
            setter.Text(section.Heading, HeadingHeightMm, isBold: true);
            setter.Space(1.5);
            foreach (var block in section.Blocks)
            {
                Set(setter, block);
            }
        }

        return setter.Finished();
    }

    private static void Set(Setter setter, SummaryBlock block)
    {
        switch (block)
        {
            case ParagraphBlock paragraph:
                setter.Text(paragraph.Text, TextHeightMm);
                break;
            case NoteBlock note:
                setter.Note((note.IsCaution ? "Caution. " : string.Empty) + note.Text, note.IsCaution ? CautionFill : NoteFill);
                break;
            case TableBlock table:
                setter.Table(table);
                break;
            case DrawingBlock drawings:
                foreach (var drawing in drawings.Drawings)
                {
                    setter.Drawing(drawing);
                }

                setter.Text(drawings.Caption, Ink.SmallHeightMm);
                break;
            case PictureBlock picture:
                setter.Text($"Picture {picture.RelativePath}: {picture.Caption}", Ink.SmallHeightMm);
                break;
            case FilesBlock files:
                foreach (var (path, description) in files.Files)
                {
                    setter.Text($"{path}: {description}", TextHeightMm);
                }

                break;
            default:
                throw new ArgumentException($"No sheet for a {block.GetType().Name}.", nameof(block));
        }

        setter.Space(2.5);
    }

    /// <summary>Where the next line goes, sheet by sheet.</summary>
    private sealed class Setter(PaperSize paper, string title, string footer)
    {
        private readonly List<PageBuilder> sheets = [];
        private double y = double.PositiveInfinity;

        private double Width => paper.WidthMm - (2 * MarginMm);

        private double Bottom => paper.HeightMm - MarginMm - 4;

        public void Space(double heightMm) => y += heightMm;

        /// <summary>Begins a new sheet unless so much room is left.</summary>
        public PageBuilder Room(double heightMm)
        {
            if (y + heightMm > Bottom && !(sheets.Count > 0 && y <= MarginMm))
            {
                sheets.Add(new(paper.WidthMm, paper.HeightMm, title) { Layer = "text" });
                y = MarginMm;
            }

            return sheets[^1];
        }

        public void Text(string text, double capHeightMm, bool isBold = false)
        {
            foreach (var line in StrokeFont.Wrapped(text, capHeightMm, Width))
            {
                var sheet = Room(capHeightMm * StrokeFont.LineSpacing);
                y += capHeightMm * StrokeFont.LineSpacing;
                sheet.Text(new(MarginMm, y), line, capHeightMm, Ink.Text, isBold: isBold);
            }
        }

        public void Note(string text, Colour fill)
        {
            const double InsetMm = 2.5;
            var lines = StrokeFont.Wrapped(text, TextHeightMm, Width - (2 * InsetMm)).ToList();
            var height = (lines.Count * TextHeightMm * StrokeFont.LineSpacing) + (2 * InsetMm) - 1;
            var sheet = Room(height);
            sheet.Rectangle(MarginMm, y, Width, height, fill, null);
            var line = y + InsetMm + TextHeightMm;
            foreach (var each in lines)
            {
                sheet.Text(new(MarginMm + InsetMm, line), each, TextHeightMm, Ink.Text);
                line += TextHeightMm * StrokeFont.LineSpacing;
            }

            y += height;
        }

        public void Table(TableBlock table)
        {
            var widths = Widths(table);
            Text(table.Caption, Ink.SmallHeightMm);
            Space(0.8);
            Row(table.Headers, widths, HeadRule, isBold: true);
            foreach (var row in table.Rows)
            {
                Row(row, widths, Rule);
            }
        }

        public double HeightOf(Page drawing) => drawing.HeightMm * ScaleOf(drawing);

        /// <summary>A drawing at its own size; smaller when the sheet is too small for it.</summary>
        public void Drawing(Page drawing)
        {
            var scale = ScaleOf(drawing);
            var sheet = Room(drawing.HeightMm * scale);
            var origin = new PagePoint(MarginMm, y);
            foreach (var item in drawing.Items)
            {
                sheet.Add(item.Placed(origin, scale));
            }

            y += drawing.HeightMm * scale;
        }

        public IReadOnlyList<Page> Finished()
        {
            for (var i = 0; i < sheets.Count; i++)
            {
                var number = string.Create(CultureInfo.InvariantCulture, $"{i + 1} / {sheets.Count}");
                sheets[i].Text(new(MarginMm, paper.HeightMm - (MarginMm / 2)), footer, Ink.SmallHeightMm, Ink.Faint);
                sheets[i].Text(new(paper.WidthMm - MarginMm, paper.HeightMm - (MarginMm / 2)), number, Ink.SmallHeightMm, Ink.Faint, TextAnchor.End);
            }

            return [.. sheets.Select(sheet => sheet.Build())];
        }

        private double ScaleOf(Page drawing) => Math.Min(1, Math.Min(Width / drawing.WidthMm, (Bottom - MarginMm - 40) / drawing.HeightMm));

        private void Row(IReadOnlyList<string> cells, double[] widths, Pen rule, bool isBold = false)
        {
            var lines = cells.Select((cell, i) => StrokeFont.Wrapped(cell, TextHeightMm, widths[i]).ToList()).ToList();
            var height = lines.Max(cell => Math.Max(1, cell.Count)) * TextHeightMm * StrokeFont.LineSpacing;
            var sheet = Room(height + 1.2);
            var x = MarginMm;
            for (var i = 0; i < lines.Count; i++)
            {
                for (var k = 0; k < lines[i].Count; k++)
                {
                    sheet.Text(new(x, y + TextHeightMm + 0.8 + (k * TextHeightMm * StrokeFont.LineSpacing)), lines[i][k], TextHeightMm, Ink.Text, isBold: isBold);
                }

                x += widths[i] + CellGapMm;
            }

            y += height + 1.2;
            sheet.Line(new(MarginMm, y - 0.6), new(MarginMm + Width, y - 0.6), rule);
        }

        /// <summary>As wide as the widest cell; where that is too much, the widest columns give way.</summary>
        private double[] Widths(TableBlock table)
        {
            var widths = table.Headers.Select((header, i) => table.Rows.Select(row => row[i]).Append(header)
                .Max(cell => StrokeFont.WidthMm(cell, TextHeightMm) * 1.03)).ToArray();
            var room = Width - (CellGapMm * (widths.Length - 1));
            var most = room;
            while (widths.Sum(width => Math.Min(width, most)) > room && most > 1)
            {
                most *= 0.97;
            }

            return [.. widths.Select(width => Math.Min(width, most))];
        }
    }
}
