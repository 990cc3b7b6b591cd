using SectionScan.Drawings.Pages;

namespace SectionScan.Drawings.Targets;

/// <summary>The printed scale targets, each on one page at true size.</summary>
public static class TargetPage
{
    /// <summary>Draws a target on a size of paper.</summary>
    /// <param name="kind">Which target. The sheet lies on its side; the card and the tags stand upright.</param>
    /// <param name="paper">The paper, in either direction.</param>
    /// <exception cref="ArgumentException">The paper is smaller than A4 and Letter and does not hold the target.</exception>
    public static Page Build(TargetKind kind, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(paper);
        var landscape = paper.Landscape;
        return kind switch
        {
            TargetKind.Sheet => SheetPage.Build(landscape.WidthMm, landscape.HeightMm),
            TargetKind.Card => CardPage.Build(landscape.HeightMm, landscape.WidthMm),
            TargetKind.StationTags => StationTagsPage.Build(landscape.HeightMm, landscape.WidthMm),
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such target."),
        };
    }

    /// <summary>The usual name of a target's file without its ending: <c>station-tags-a4</c>.</summary>
    public static string FileName(TargetKind kind, PaperSize paper)
    {
        ArgumentNullException.ThrowIfNull(paper);
        var name = kind switch
        {
            TargetKind.Sheet => "sheet",
            TargetKind.Card => "card",
            TargetKind.StationTags => "station-tags",
            _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "No such target."),
        };
        return $"{name}-{paper.Name}";
    }

    /// <summary>Refuses paper that is too small.</summary>
    internal static void CheckHolds(double widthMm, double heightMm, double neededWidthMm, double neededHeightMm)
    {
        if (widthMm < neededWidthMm || heightMm < neededHeightMm)
        {
            throw new ArgumentException(
                FormattableString.Invariant($"Paper of {widthMm} × {heightMm} mm does not hold {neededWidthMm} × {neededHeightMm} mm."));
        }
    }
}
