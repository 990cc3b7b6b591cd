using System.Security.Cryptography;
using System.Text;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using SectionScan.Drawings.Lettering;
using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Formats;

/// <summary>Writes pages as one PDF at true size, in vectors but for photographs. The same pages give the same bytes on every machine,
/// unless they are compressed.</summary>
public static class PdfWriter
{
    private const int IdLength = 16;
    private static readonly DateTime NoDate = new(2000, 1, 1, 0, 0, 0, DateTimeKind.Utc);

    /// <summary>Writes the document. The stream stays open.</summary>
    /// <param name="pages">The pages in order, one or more; each may have its own size.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="title">The document's title; null takes the first page's.</param>
    /// <param name="isCompressed">True for a long report: a fifth of the size, but other runtimes may deflate to other bytes.</param>
    /// <param name="createdAt">The date to stamp; null stamps 2000-01-01, so that a drawing made again is the same file.</param>
    public static void Write(IReadOnlyList<Page> pages, Stream stream, string? title = null, DateTimeOffset? createdAt = null, bool isCompressed = false)
    {
        ArgumentNullException.ThrowIfNull(pages);
        ArgumentNullException.ThrowIfNull(stream);
        if (pages.Count == 0)
        {
            throw new ArgumentException("A document has at least one page.", nameof(pages));
        }

        using var document = new PdfDocument();

        // Deflate differs between runtimes; plain streams are the same everywhere.
        document.Options.CompressContentStreams = isCompressed;
        document.Info.Title = title ?? pages[0].Title;
        document.Info.Creator = "SectionScan";
        document.Info.CreationDate = createdAt?.UtcDateTime ?? NoDate;
        document.Info.ModificationDate = document.Info.CreationDate;
        var identity = Identity(pages, document.Info.Title, document.Info.CreationDate);
        document.Internals.FirstDocumentID = identity[..IdLength];
        document.Internals.SecondDocumentID = identity[..IdLength];
        foreach (var page in pages)
        {
            Draw(page, document.AddPage());
        }

        using var buffer = new MemoryStream();
        document.Save(buffer, closeStream: false);
        var bytes = buffer.ToArray();
        SetIdentifier(bytes, "<xmpMM:DocumentID>uuid:"u8, identity);
        SetIdentifier(bytes, "<xmpMM:InstanceID>uuid:"u8, identity);
        stream.Write(bytes);
    }

    private static void Draw(Page page, PdfPage target)
    {
        target.Width = XUnit.FromMillimeter(page.WidthMm);
        target.Height = XUnit.FromMillimeter(page.HeightMm);
        using var graphics = XGraphics.FromPdfPage(target);
        foreach (var item in page.Items)
        {
            if (item is PictureItem picture)
            {
                Draw(picture, graphics);
                continue;
            }

            var path = item switch
            {
                PathItem plain => plain,
                TextItem text => StrokeFont.ToPath(text),
                _ => throw new ArgumentException($"No PDF for a {item.GetType().Name}.", nameof(page)),
            };
            if (path.Fill is { } fill)
            {
                graphics.DrawPath(new XSolidBrush(ColourOf(fill)), AreaOf(path));
            }

            if (path.Stroke is { } pen)
            {
                var drawn = PenOf(pen);
                foreach (var contour in path.Contours)
                {
                    graphics.DrawPath(drawn, LineOf(contour));
                }
            }
        }
    }

    private static void Draw(PictureItem picture, XGraphics graphics)
    {
        using var bytes = new MemoryStream(picture.Jpeg.ToArray());
        using var image = XImage.FromStream(bytes);
        graphics.DrawImage(image, Points(picture.LeftMm), Points(picture.TopMm), Points(picture.WidthMm), Points(picture.HeightMm));
    }

    private static XGraphicsPath AreaOf(PathItem item)
    {
        var path = new XGraphicsPath { FillMode = XFillMode.Alternate };
        foreach (var contour in item.Contours)
        {
            path.AddPolygon(PointsOf(contour));
        }

        return path;
    }

    // One path for each contour: PDFsharp joins an open run to the one before it, whatever StartFigure says.
    private static XGraphicsPath LineOf(Contour contour)
    {
        var path = new XGraphicsPath();
        if (contour.IsClosed)
        {
            path.AddPolygon(PointsOf(contour));
        }
        else
        {
            path.AddLines(PointsOf(contour));
        }

        return path;
    }

    private static XPoint[] PointsOf(Contour contour) => [.. contour.Points.Select(p => new XPoint(Points(p.XMm), Points(p.YMm)))];

    private static XPen PenOf(Pen pen)
    {
        var drawn = new XPen(ColourOf(pen.Colour), Points(pen.WidthMm))
        {
            LineCap = pen.IsRound ? XLineCap.Round : XLineCap.Flat,
            LineJoin = pen.IsRound ? XLineJoin.Round : XLineJoin.Miter,
        };
        if (pen.DashesMm.Count > 0)
        {
            // PDFsharp counts dashes in widths of the pen.
            drawn.DashPattern = [.. pen.DashesMm.Select(dash => dash / pen.WidthMm)];
        }

        return drawn;
    }

    private static XColor ColourOf(Colour colour) => XColor.FromArgb(colour.Red, colour.Green, colour.Blue);

    private static double Points(double mm) => mm * 72 / 25.4;

    private static string Identity(IReadOnlyList<Page> pages, string title, DateTime date)
    {
        using var content = new MemoryStream();
        content.Write(Encoding.UTF8.GetBytes(FormattableString.Invariant($"{title} {date:O}")));
        foreach (var page in pages)
        {
            SvgWriter.Write(page, content);
        }

        return Convert.ToHexStringLower(SHA256.HashData(content.ToArray()));
    }

    // PDFsharp writes two random identifiers into the metadata and has no setting for them. They are replaced in place, digit for
    // digit, so that no offset in the file moves.
    private static void SetIdentifier(byte[] bytes, ReadOnlySpan<byte> label, string identity)
    {
        var at = bytes.AsSpan().IndexOf(label);
        if (at < 0)
        {
            throw new InvalidOperationException("The PDF library no longer writes the identifiers that must be made repeatable.");
        }

        var digits = 0;
        foreach (ref var character in bytes.AsSpan(at + label.Length, 36))
        {
            character = character == (byte)'-' ? character : (byte)identity[digits++];
        }
    }
}
