namespace SectionScan.Drawings.Pages;

/// <summary>The size of a JPEG picture, from its frame header.</summary>
public static class JpegSize
{
    private const byte Lead = 0xFF;

    /// <summary>Reads width and height in pixels.</summary>
    /// <param name="jpeg">A JPEG file's bytes.</param>
    /// <exception cref="ArgumentException">The bytes hold no JPEG frame header (ITU-T T.81, B.2.2).</exception>
    public static (int WidthPx, int HeightPx) Of(ReadOnlySpan<byte> jpeg)
    {
        var at = 2;
        while (at + 9 < jpeg.Length && jpeg[at] == Lead)
        {
            var marker = jpeg[at + 1];

            // SOF0 to SOF15, without the tables DHT, JPG and DAC that lie among them.
            if (marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC))
            {
                return ((jpeg[at + 7] << 8) | jpeg[at + 8], (jpeg[at + 5] << 8) | jpeg[at + 6]);
            }

            at += 2 + ((jpeg[at + 2] << 8) | jpeg[at + 3]);
        }

        throw new ArgumentException("The bytes hold no JPEG picture.", nameof(jpeg));
    }
}
