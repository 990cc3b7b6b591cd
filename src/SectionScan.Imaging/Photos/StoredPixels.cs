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
}
