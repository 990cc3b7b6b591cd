using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;

namespace SectionScan.Drawings.Summaries;

/// <summary>Sets a table: columns as wide as they need, the widest broken into lines where all do not fit, the head again on a new sheet.</summary>
internal static class PaperTable
{
    private const double BetweenMm = 4;
    private const double LeastColumnMm = 12;
    private const double LeadMm = 1.7;

    // Caption, head and a few rows.
    private const double BeginningMm = 36;

    // Two lines and the gap below them.
    private const double CaptionMm = 9.5;

    // A table of less than this is not parted.
    private const double MostTogetherMm = 100;
    private static readonly Pen Strong = new(Ink.Line, 0.25);
    private static readonly Pen Weak = new(Colour.Grey(190), 0.13);

    // A table this long that is narrow enough stands in strips beside each other.
    private const int LongRows = 10;

    /// <summary>The height without which the table begins on a new sheet, mm: all of a short one.</summary>
    public static double TogetherMm(PaperFlow flow, TableBlock whole) => TogetherMm(Lay(flow, whole));

    public static void Add(PaperFlow flow, TableBlock whole)
    {
        var laid = Lay(flow, whole);
        var (table, text, widths, rows) = laid;
        flow.KeepTogether(TogetherMm(laid));
        flow.Paragraph(table.Caption, Ink.SmallHeightMm);
        var isNumber = Enumerable.Range(0, table.Headers.Count).Select(i => SummaryWriter.IsNumeric(whole, i % whole.Headers.Count)).ToArray();
        Head();
        foreach (var cells in rows.Skip(1))
        {
            var height = Height(cells, text);
            Row(cells, flow.Take(height, Head), Weak, height);
        }

        flow.Space(4);

        void Head()
        {
            var height = Height(rows[0], text);
            Row(rows[0], flow.Take(height), Strong, height);
        }

        void Row(List<IReadOnlyList<string>> cells, double top, Pen rule, double height)
        {
            var x = PaperFlow.LeftMm;
            for (var i = 0; i < cells.Count; i++)
            {
                for (var k = 0; k < cells[i].Count; k++)
                {
                    var baseline = top + text + (k * text * StrokeFont.LineSpacing) + 0.4;
                    flow.Sheet.Text(
                        new(isNumber[i] ? x + widths[i] : x, baseline), cells[i][k], text, Ink.Text, isNumber[i] ? TextAnchor.End : TextAnchor.Start,
                        isBold: rule == Strong);
                }

                x += widths[i] + BetweenMm;
            }

            var y = top + height - 0.5;
            flow.Sheet.Line(new(PaperFlow.LeftMm, y), new(x - BetweenMm, y), rule);
        }
    }

    /// <summary>Breaks a table's cells into lines, the headers first.</summary>
    private static LaidTable Lay(PaperFlow flow, TableBlock whole)
    {
        var table = InStrips(whole, flow.WidthMm);
        var text = FontMm(flow, table);
        var widths = Widths(flow, table, text);
        return new(table, text, widths, [.. table.Rows.Prepend(table.Headers).Select(Broken)]);

        List<IReadOnlyList<string>> Broken(IReadOnlyList<string> row) => [.. row.Select((cell, i) => StrokeFont.Wrapped(cell, text, widths[i] + 0.01))];
    }

    private static double TogetherMm(LaidTable laid) =>
        CaptionMm + laid.Rows.Sum(row => Height(row, laid.TextMm)) is var wholeMm && wholeMm <= MostTogetherMm ? wholeMm : BeginningMm;

    private static double Height(List<IReadOnlyList<string>> cells, double text) => (Math.Max(1, cells.Max(lines => lines.Count)) * text * StrokeFont.LineSpacing) + LeadMm;

    private static TableBlock InStrips(TableBlock table, double widthMm)
    {
        var width = Natural(table, PaperFlow.BodyMm - 0.2).Sum() + (table.Headers.Count * BetweenMm);
        var strips = table.Rows.Count < LongRows ? 1 : Math.Min(3, (int)((widthMm + BetweenMm) / width));
        if (strips < 2)
        {
            return table;
        }

        var length = (table.Rows.Count + strips - 1) / strips;
        string[] none = [.. table.Headers.Select(_ => string.Empty)];
        return new(
            table.Caption, [.. Enumerable.Repeat(table.Headers, strips).SelectMany(each => each)],
            [
                .. Enumerable.Range(0, length).Select(i => (IReadOnlyList<string>)
                    [.. Enumerable.Range(0, strips).SelectMany(k => (k * length) + i < table.Rows.Count ? table.Rows[(k * length) + i] : none)]),
            ]);
    }

    // Smaller lettering before breaking lines, within what can be read.
    private static double FontMm(PaperFlow flow, TableBlock table)
    {
        foreach (var size in new[] { PaperFlow.BodyMm - 0.2, 1.9 })
        {
            if (Natural(table, size).Sum() + ((table.Headers.Count - 1) * BetweenMm) <= flow.WidthMm)
            {
                return size;
            }
        }

        return 1.75;
    }

    private static double[] Natural(TableBlock table, double text) =>
        [.. Enumerable.Range(0, table.Headers.Count).Select(i =>
            table.Rows.Select(row => row[i]).Append(table.Headers[i]).Max(cell => StrokeFont.WidthMm(cell, text)) + 0.3)];

    private static double[] Widths(PaperFlow flow, TableBlock table, double text)
    {
        var widths = Natural(table, text);
        var room = flow.WidthMm - ((widths.Length - 1) * BetweenMm);
        var fair = room / widths.Length;
        while (widths.Sum() > room + 1e-9)
        {
            // The wide columns share what the narrow ones leave.
            var narrow = widths.Where(w => w <= fair).ToArray();
            var wide = widths.Length - narrow.Length;
            if (wide == 0)
            {
                break;
            }

            var next = Math.Max(LeastColumnMm, (room - narrow.Sum()) / wide);
            if (Math.Abs(next - fair) < 1e-6)
            {
                widths = [.. widths.Select(w => Math.Min(w, fair))];
                break;
            }

            fair = next;
        }

        return widths;
    }

    private sealed record LaidTable(TableBlock Table, double TextMm, double[] WidthsMm, IReadOnlyList<List<IReadOnlyList<string>>> Rows);
}
