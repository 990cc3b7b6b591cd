namespace SectionScan.Drawings.Templates;

/// <summary>Lays upright boxes on pages: the highest first, each as high up and then as far left as any free rectangle allows.</summary>
/// <remarks>Free space as the list of all largest free rectangles ("maximal rectangles": J. Jylänki, "A thousand ways to pack the bin",
/// 2010, cited from memory).</remarks>
internal static class TemplateNesting
{
    /// <summary>Places boxes that each fit the area.</summary>
    /// <param name="boxes">Widths and heights, mm.</param>
    /// <param name="widthMm">The usable width of a page.</param>
    /// <param name="heightMm">The usable height of a page.</param>
    /// <param name="gapMm">Free between boxes.</param>
    /// <returns>Places in the order of the boxes.</returns>
    public static IReadOnlyList<Place> Nest(IReadOnlyList<(double WidthMm, double HeightMm)> boxes, double widthMm, double heightMm, double gapMm)
    {
        var places = new Place[boxes.Count];
        var pages = new List<List<Area>>();
        foreach (var index in Enumerable.Range(0, boxes.Count).OrderByDescending(i => boxes[i].HeightMm).ThenBy(i => i))
        {
            // A gap right of and below each box, and as much more room on the page.
            var (width, height) = (boxes[index].WidthMm + gapMm, boxes[index].HeightMm + gapMm);
            var page = pages.FindIndex(free => free.Any(area => area.Holds(width, height)));
            if (page < 0)
            {
                page = pages.Count;
                pages.Add([new(0, 0, widthMm + gapMm, heightMm + gapMm)]);
            }

            var chosen = pages[page].Where(area => area.Holds(width, height)).OrderBy(area => area.Top).ThenBy(area => area.Left).First();
            places[index] = new(page, chosen.Left, chosen.Top);
            pages[page] = Without(pages[page], new(chosen.Left, chosen.Top, chosen.Left + width, chosen.Top + height));
        }

        return places;
    }

    /// <summary>The largest free rectangles that are left when a box is taken out.</summary>
    private static List<Area> Without(List<Area> free, Area taken)
    {
        var left = new List<Area>();
        foreach (var area in free)
        {
            if (!area.Overlaps(taken))
            {
                left.Add(area);
                continue;
            }

            Area[] parts =
            [
                area with { Right = taken.Left }, area with { Left = taken.Right }, area with { Bottom = taken.Top }, area with { Top = taken.Bottom },
            ];
            left.AddRange(parts.Where(part => part.Left < part.Right && part.Top < part.Bottom));
        }

        var distinct = left.Distinct().ToList();
        return [.. distinct.Where(area => !distinct.Any(other => other != area && other.Contains(area)))];
    }

    /// <summary>Where a box came to lie: its page and its top-left corner in the usable area, mm.</summary>
    public readonly record struct Place(int Page, double XMm, double YMm);

    private readonly record struct Area(double Left, double Top, double Right, double Bottom)
    {
        private const double RoundingMm = 1e-6;

        public bool Holds(double width, double height) => width <= Right - Left + RoundingMm && height <= Bottom - Top + RoundingMm;

        public bool Overlaps(Area other) => Left < other.Right && other.Left < Right && Top < other.Bottom && other.Top < Bottom;

        public bool Contains(Area other) => Left <= other.Left && Top <= other.Top && Right >= other.Right && Bottom >= other.Bottom;
    }
}
