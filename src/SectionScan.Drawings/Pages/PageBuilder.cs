using SectionScan.Drawings.Lettering;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Pages;

/// <summary>Collects the items of a page, from back to front.</summary>
/// <param name="widthMm">The page's width, mm.</param>
/// <param name="heightMm">The page's height, mm.</param>
/// <param name="title">What the page shows.</param>
public sealed class PageBuilder(double widthMm, double heightMm, string title)
{
    private readonly List<PageItem> items = [];

    /// <summary>The page's width, mm.</summary>
    public double WidthMm { get; } = widthMm > 0 && double.IsFinite(widthMm)
        ? widthMm
        : throw new ArgumentOutOfRangeException(nameof(widthMm), widthMm, "A page has a positive width.");

    /// <summary>The page's height, mm.</summary>
    public double HeightMm { get; } = heightMm > 0 && double.IsFinite(heightMm)
        ? heightMm
        : throw new ArgumentOutOfRangeException(nameof(heightMm), heightMm, "A page has a positive height.");

    /// <summary>The layer of what is added from now on.</summary>
    public string Layer { get; set; } = "drawing";

    /// <summary>Adds areas and lines; null leaves the fill or the line out.</summary>
    public void Path(IReadOnlyList<Contour> contours, Colour? fill, Pen? stroke)
        => items.Add(new PathItem(contours, fill, stroke) { Layer = Layer });

    /// <summary>Adds a straight line.</summary>
    public void Line(PagePoint from, PagePoint to, Pen stroke) => Path([new([from, to], IsClosed: false)], null, stroke);

    /// <summary>Adds several straight lines of one pen as one path.</summary>
    public void Lines(IEnumerable<(PagePoint From, PagePoint To)> lines, Pen stroke)
        => Path([.. lines.Select(line => new Contour([line.From, line.To], IsClosed: false))], null, stroke);

    /// <summary>Adds an open run of straight pieces.</summary>
    public void Polyline(IReadOnlyList<PagePoint> points, Pen stroke) => Path([new(points, IsClosed: false)], null, stroke);

    /// <summary>Adds an upright rectangle.</summary>
    public void Rectangle(double leftMm, double topMm, double rectangleWidthMm, double rectangleHeightMm, Colour? fill, Pen? stroke)
        => Path([Contour.Rectangle(leftMm, topMm, rectangleWidthMm, rectangleHeightMm)], fill, stroke);

    /// <summary>Adds one line of text.</summary>
    public void Text(
        PagePoint position,
        string text,
        double capHeightMm,
        Colour colour,
        TextAnchor anchor = TextAnchor.Start,
        Angle turn = default,
        bool isBold = false)
        => items.Add(new TextItem(position, text, capHeightMm, colour) { Anchor = anchor, Turn = turn, IsBold = isBold, Layer = Layer });

    /// <summary>Adds things made elsewhere, such as a drawing set into this page.</summary>
    public void Add(IEnumerable<PageItem> more) => items.AddRange(more);

    /// <summary>Adds text broken at spaces to fit a width, and gives the baseline that a further line would have.</summary>
    /// <param name="position">Start of the first baseline.</param>
    /// <param name="text">The text.</param>
    /// <param name="capHeightMm">Height of a capital letter, mm; lines stand 1.8 of it apart.</param>
    /// <param name="maxWidthMm">The width to fit into; a single longer word runs over.</param>
    /// <param name="colour">The colour.</param>
    public double Paragraph(PagePoint position, string text, double capHeightMm, double maxWidthMm, Colour colour)
    {
        var y = position.YMm;
        foreach (var line in StrokeFont.Wrapped(text, capHeightMm, maxWidthMm))
        {
            Text(new(position.XMm, y), line, capHeightMm, colour);
            y += StrokeFont.LineSpacing * capHeightMm;
        }

        return y;
    }

    /// <summary>The finished page.</summary>
    public Page Build() => new(WidthMm, HeightMm, title, [.. items]);
}
