using OpenCvSharp;
using SectionScan.Imaging.Photos;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Digitising;

/// <summary>The photo, upright and small enough to open at once, with the outlines drawn over it.</summary>
internal static class OutlinePicture
{
    private const int LongestSidePx = 2200;
    private const int JpegQuality = 88;

    /// <summary>Draws the picture.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="sections">The sections.</param>
    /// <returns>A JPEG file's bytes; the same photo and sections always give the same ones.</returns>
    public static byte[] Draw(Photo photo, IReadOnlyList<DigitisedSection> sections)
    {
        var scale = Math.Min(1.0, LongestSidePx / (double)Math.Max(photo.Colour.Width, photo.Colour.Height));
        using var picture = new Mat();
        Cv2.Resize(photo.Colour, picture, new Size(), scale, scale, InterpolationFlags.Area);
        for (var turn = 0; turn < photo.QuarterTurns; turn++)
        {
            Cv2.Rotate(picture, picture, RotateFlags.Rotate90Clockwise);
        }

        foreach (var section in sections)
        {
            Draw(picture, section, scale);
        }

        return picture.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, JpegQuality));
    }

    private static void Draw(Mat picture, DigitisedSection section, double scale)
    {
        const int Shift = 4;
        var outline = section.DisplayedPixels.Select(p => Scaled(p, scale, Shift)).ToArray();

        // Dark under light reads on any colour of rubber.
        Cv2.Polylines(picture, [outline], true, new Scalar(20, 20, 20), 5, LineTypes.AntiAlias, Shift);
        Cv2.Polylines(picture, [outline], true, new Scalar(60, 230, 255), 2, LineTypes.AntiAlias, Shift);
        var middle = new PixelPoint(section.DisplayedPixels.Average(p => p.X), section.DisplayedPixels.Average(p => p.Y));
        if (section.Station is { } station)
        {
            var label = station.ToString(System.Globalization.CultureInfo.InvariantCulture);
            var at = Scaled(middle, scale, 0);
            var size = Cv2.GetTextSize(label, HersheyFonts.HersheySimplex, 1.6, 3, out _);
            var corner = new Point(at.X - (size.Width / 2), at.Y + (size.Height / 2));
            Cv2.PutText(picture, label, corner, HersheyFonts.HersheySimplex, 1.6, new Scalar(20, 20, 20), 8, LineTypes.AntiAlias);
            Cv2.PutText(picture, label, corner, HersheyFonts.HersheySimplex, 1.6, new Scalar(255, 255, 255), 3, LineTypes.AntiAlias);
        }
    }

    private static Point Scaled(PixelPoint p, double scale, int shift) => new(
        (int)Math.Round((((p.X + 0.5) * scale) - 0.5) * (1 << shift)), (int)Math.Round((((p.Y + 0.5) * scale) - 0.5) * (1 << shift)));
}
