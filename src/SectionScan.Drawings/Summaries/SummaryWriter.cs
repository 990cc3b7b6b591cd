using System.Globalization;
using System.Net;
using System.Text;
using System.Xml.Linq;
using SectionScan.Drawings.Formats;

namespace SectionScan.Drawings.Summaries;

/// <summary>Writes a summary page as one HTML file: style and drawings within, no scripts, nothing from the network. All text is
/// escaped.</summary>
public static class SummaryWriter
{
    /// <summary>Writes the page, UTF-8, lines ended by \n. The stream stays open.</summary>
    /// <exception cref="ArgumentException">A file's path is absolute or leaves the page's folder, or a row of a table has too few or too
    /// many cells.</exception>
    public static void Write(SummaryPage page, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(page);
        ArgumentNullException.ThrowIfNull(stream);
        var html = new StringBuilder();
        Line(html, "<!DOCTYPE html>");
        Line(html, "<html lang=\"en\">");
        Line(html, "<head>");
        Line(html, "<meta charset=\"utf-8\">");
        Line(html, "<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
        Line(html, $"<title>{Escaped(page.Title)}</title>");
        Line(html, $"<style>\n{SummaryStyle.Css}\n</style>");
        Line(html, "</head>");
        Line(html, "<body>");
        Line(html, $"<header>\n<h1>{Escaped(page.Title)}</h1>\n<p class=\"introduction\">{Escaped(page.Introduction)}</p>");
        if (page.Facts.Count > 0)
        {
            Line(html, $"<dl>{string.Concat(page.Facts.Select(fact => $"<dt>{Escaped(fact.Name)}</dt><dd>{Escaped(fact.Value)}</dd>"))}</dl>");
        }

        if (page.Sections.Count > 2)
        {
            Contents(html, page);
        }

        Line(html, "</header>");
        Line(html, "<main>");
        for (var i = 0; i < page.Sections.Count; i++)
        {
            Line(html, $"<section aria-labelledby=\"section-{Number(i + 1)}\">");
            Line(html, $"<h2 id=\"section-{Number(i + 1)}\">{Escaped(page.Sections[i].Heading)}</h2>");
            foreach (var block in page.Sections[i].Blocks)
            {
                Block(html, block);
            }

            Line(html, "</section>");
        }

        Line(html, "</main>");
        if (page.Footer.Length > 0)
        {
            Line(html, $"<footer>{Escaped(page.Footer)}</footer>");
        }

        Line(html, "</body>");
        Line(html, "</html>");
        stream.Write(Encoding.UTF8.GetBytes(html.ToString().ReplaceLineEndings("\n")));
    }

    private static void Contents(StringBuilder html, SummaryPage page)
    {
        Line(html, "<nav aria-label=\"Contents\">\n<ol>");
        for (var i = 0; i < page.Sections.Count; i++)
        {
            Line(html, $"<li><a href=\"#section-{Number(i + 1)}\">{Escaped(page.Sections[i].Heading)}</a></li>");
        }

        Line(html, "</ol>\n</nav>");
    }

    private static void Block(StringBuilder html, SummaryBlock block)
    {
        switch (block)
        {
            case ParagraphBlock paragraph:
                Line(html, $"<p>{Escaped(paragraph.Text)}</p>");
                break;
            case NoteBlock { IsCaution: true } caution:
                Line(html, $"<p class=\"note caution\"><strong>Caution.</strong> {Escaped(caution.Text)}</p>");
                break;
            case NoteBlock note:
                Line(html, $"<p class=\"note\">{Escaped(note.Text)}</p>");
                break;
            case TableBlock table:
                Table(html, table);
                break;
            case DrawingBlock drawing:
                Line(html, $"<figure>\n<div class=\"drawings\" tabindex=\"0\" role=\"region\" aria-label=\"{Escaped(drawing.Caption)}\">");
                foreach (var sheet in drawing.Drawings)
                {
                    Line(html, SvgWriter.ToElement(sheet).ToString(SaveOptions.DisableFormatting));
                }

                Line(html, $"</div>\n<figcaption>{Escaped(drawing.Caption)}</figcaption>\n</figure>");
                break;
            case PictureBlock picture:
                Line(html, $"<figure>\n<img src=\"{Address(picture.RelativePath)}\" alt=\"{Escaped(picture.Description)}\" loading=\"lazy\">");
                Line(html, $"<figcaption>{Escaped(picture.Caption)}</figcaption>\n</figure>");
                break;
            case PhotographBlock photograph:
                Line(html, $"<figure>\n<img src=\"data:image/jpeg;base64,{Convert.ToBase64String(photograph.Jpeg.Span)}\" alt=\"{Escaped(photograph.Description)}\">");
                Line(html, $"<figcaption>{Escaped(photograph.Caption)}</figcaption>\n</figure>");
                break;
            case FilesBlock files:
                Line(html, "<ul class=\"files\">");
                foreach (var (path, description) in files.Files)
                {
                    Line(html, $"<li><a href=\"{Address(path)}\">{Escaped(path)}</a>: {Escaped(description)}</li>");
                }

                Line(html, "</ul>");
                break;
            default:
                throw new ArgumentException($"No HTML for a {block.GetType().Name}.", nameof(block));
        }
    }

    private static void Table(StringBuilder html, TableBlock table)
    {
        if (table.Rows.Any(row => row.Count != table.Headers.Count))
        {
            throw new ArgumentException($"Every row of \"{table.Caption}\" must have {table.Headers.Count} cells.", nameof(table));
        }

        // The area scrolls sideways on a narrow screen and must then be reachable by keyboard.
        Line(html, $"<div class=\"scroll\" tabindex=\"0\" role=\"region\" aria-label=\"{Escaped(table.Caption)}\">");
        Line(html, $"<table>\n<caption>{Escaped(table.Caption)}</caption>\n<thead>\n<tr>");
        var classes = Enumerable.Range(0, table.Headers.Count).Select(i => IsNumeric(table, i) ? " class=\"number\"" : string.Empty).ToArray();
        for (var i = 0; i < table.Headers.Count; i++)
        {
            Line(html, $"<th scope=\"col\"{classes[i]}>{Escaped(table.Headers[i])}</th>");
        }

        Line(html, "</tr>\n</thead>\n<tbody>");
        foreach (var row in table.Rows)
        {
            var cells = row.Select((cell, i) => i == 0
                ? $"<th scope=\"row\">{Escaped(cell)}</th>"
                : $"<td{classes[i]}>{Escaped(cell)}</td>");
            Line(html, $"<tr>{string.Concat(cells)}</tr>");
        }

        Line(html, "</tbody>\n</table>\n</div>");
    }

    /// <summary>True for a column of numbers, which is set to the right.</summary>
    internal static bool IsNumeric(TableBlock table, int column) => column > 0 && table.Rows.Count > 0
        && table.Rows.All(row => row[column].Length == 0 || char.IsAsciiDigit(row[column][0]) || "+-−–".Contains(row[column][0], StringComparison.Ordinal));

    private static string Address(string relativePath)
    {
        var parts = relativePath.Split('/');
        if (parts.Any(part => part.Length == 0 || part is "." or ".." || part.Contains('\\', StringComparison.Ordinal)))
        {
            throw new ArgumentException($"A file must be named by its path within the page's folder, not \"{relativePath}\".", nameof(relativePath));
        }

        // Percent signs hide colons, so that no part can be taken for a scheme.
        return string.Join('/', parts.Select(Uri.EscapeDataString));
    }

    private static string Number(int value) => value.ToString(CultureInfo.InvariantCulture);

    private static string Escaped(string text) => WebUtility.HtmlEncode(text);

    private static void Line(StringBuilder html, string text) => html.Append(text).Append('\n');
}
