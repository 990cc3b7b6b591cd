namespace SectionScan.Drawings.Pages;

/// <summary>One run of straight pieces of a path.</summary>
/// <param name="Points">The corners in order, 2 or more; the first is not repeated at the end of a closed contour.</param>
/// <param name="IsClosed">True when a piece leads from the last corner back to the first.</param>
public sealed record Contour(IReadOnlyList<PagePoint> Points, bool IsClosed)
{
    /// <summary>A closed upright rectangle, clockwise on the page from its top-left corner.</summary>
    public static Contour Rectangle(double leftMm, double topMm, double widthMm, double heightMm) => new(
        [new(leftMm, topMm), new(leftMm + widthMm, topMm), new(leftMm + widthMm, topMm + heightMm), new(leftMm, topMm + heightMm)],
        IsClosed: true);

    /// <summary>A closed circle as a regular polygon whose sides stay within 0.002 mm of it, beginning at the right.</summary>
    public static Contour Circle(PagePoint centre, double radiusMm)
    {
        if (!double.IsFinite(radiusMm) || radiusMm <= 0)
        {
            throw new ArgumentOutOfRangeException(nameof(radiusMm), radiusMm, "A radius must be positive.");
        }

        // Sagitta r(1 - cos(π/n)) ≈ rπ²/(2n²).
        const double SagittaMm = 0.002;
        var count = Math.Max(24, (int)Math.Ceiling(Math.PI * Math.Sqrt(radiusMm / (2 * SagittaMm))));
        var points = new PagePoint[count];
        for (var i = 0; i < count; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / count);
            points[i] = new(centre.XMm + (radiusMm * cos), centre.YMm + (radiusMm * sin));
        }

        return new(points, IsClosed: true);
    }
}
