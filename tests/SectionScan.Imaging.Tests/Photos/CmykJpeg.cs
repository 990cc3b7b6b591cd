using OpenCvSharp;

namespace SectionScan.Imaging.Tests.Photos;

/// <summary>A JPEG of four inks as print programs save it, pieced together from four grey ones: one scan for each component, in ITU-R
/// T.81's baseline sequential mode, with the Adobe marker that says "inverted, not transformed".</summary>
internal static class CmykJpeg
{
    /// <summary>Encodes a picture as cyan, magenta, yellow and no black, inverted as Adobe's programs do: then each ink is the colour
    /// itself and black is 255.</summary>
    public static byte[] Encode(Mat picture)
    {
        using var blue = picture.ExtractChannel(0);
        using var green = picture.ExtractChannel(1);
        using var red = picture.ExtractChannel(2);
        using var black = new Mat(picture.Size(), MatType.CV_8UC1, new Scalar(255));
        Mat[] inks = [red, green, blue, black];
        byte[][] files = [.. inks.Select(ink => ink.ImEncode(".jpg", new ImageEncodingParam(ImwriteFlags.JpegQuality, 97)))];
        var first = files[0];
        var file = new List<byte>([0xFF, 0xD8, 0xFF, 0xEE, 0, 14, .. "Adobe"u8, 0, 100, 0, 0, 0, 0, 0]);

        // Tables are the same in all four: quantisation (DB) and Huffman (C4); the frame (C0) is written anew for four components.
        foreach (var (marker, at, length) in Segments(first))
        {
            if (marker is 0xDB or 0xC4)
            {
                file.AddRange(first[at..(at + length)]);
            }
            else if (marker == 0xC0)
            {
                file.AddRange([0xFF, 0xC0, 0, 20, 8, .. first[(at + 5)..(at + 9)], 4]);
                for (var component = 1; component <= 4; component++)
                {
                    file.AddRange([(byte)component, 0x11, 0]);
                }
            }
        }

        for (var component = 1; component <= 4; component++)
        {
            var own = files[component - 1];
            var (_, at, length) = Segments(own).Single(s => s.Marker == 0xDA);
            file.AddRange([0xFF, 0xDA, 0, 8, 1, (byte)component, 0, 0, 63, 0, .. own[(at + length)..^2]]);
        }

        file.AddRange([0xFF, 0xD9]);
        return [.. file];
    }

    /// <summary>Marker segments up to the scan: marker, where it begins, its length with the marker.</summary>
    private static IEnumerable<(byte Marker, int At, int Length)> Segments(byte[] jpeg)
    {
        for (var at = 2; at + 4 <= jpeg.Length;)
        {
            var length = 2 + (jpeg[at + 2] << 8) + jpeg[at + 3];
            yield return (jpeg[at + 1], at, length);
            if (jpeg[at + 1] == 0xDA)
            {
                yield break;
            }

            at += length;
        }
    }
}
