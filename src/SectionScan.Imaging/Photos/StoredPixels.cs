using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Photos;

/// <summary>Between pixels as stored, which are measured, and pixels as displayed, which people see.</summary>
internal static class StoredPixels
{
    /// <summary>Where a stored pixel is displayed.</summary>
    /// <param name="stored">The place in the stored picture.</param>
    /// <param name="quarterTurns">Quarter turns clockwise to the display.</param>
    /// <param name="storedWidthPx">Width as stored.</param>
    /// <param name="storedHeightPx">Height as stored.</param>
    public static PixelPoint ToDisplayed(PixelPoint stored, int quarterTurns, int storedWidthPx, int storedHeightPx) => quarterTurns switch
    {
        1 => new(storedHeightPx - 1 - stored.Y, stored.X),
        2 => new(storedWidthPx - 1 - stored.X, storedHeightPx - 1 - stored.Y),
        3 => new(stored.Y, storedWidthPx - 1 - stored.X),
        _ => stored,
    };

    /// <summary>The stored pixel that is displayed at a place; the inverse of <see cref="ToDisplayed"/>.</summary>
    /// <param name="displayed">The place as displayed.</param>
    /// <param name="quarterTurns">Quarter turns clockwise to the display.</param>
    /// <param name="storedWidthPx">Width as stored.</param>
    /// <param name="storedHeightPx">Height as stored.</param>
    public static PixelPoint FromDisplayed(PixelPoint displayed, int quarterTurns, int storedWidthPx, int storedHeightPx) => quarterTurns switch
    {
        1 => new(displayed.Y, storedHeightPx - 1 - displayed.X),
        2 => new(storedWidthPx - 1 - displayed.X, storedHeightPx - 1 - displayed.Y),
        3 => new(storedWidthPx - 1 - displayed.Y, displayed.X),
        _ => displayed,
    };
}
