using System.Buffers.Binary;
using OpenCvSharp;

namespace SectionScan.Imaging.Tests.Photos;

/// <summary>Writes a digital negative: one strip of 16-bit linear light under a red-green-green-blue mosaic (TIFF 6.0; DNG specification 1.4;
/// EXIF 2.32; tags from memory).</summary>
internal static class DngFile
{
    private const int Byte = 1;
    private const int Text = 2;
    private const int Short = 3;
    private const int Long = 4;
    private const int Ratio = 10;

    /// <summary>Writes a picture as a raw file that gives it back.</summary>
    /// <param name="picture">Blue, green, red, 8 bits, as sRGB.</param>
    /// <param name="orientation">EXIF orientation.</param>
    public static byte[] Write(Mat picture, int orientation)
    {
        var mosaic = Mosaic(picture);

        // White is (1, 1, 1) for the sensor, so that its colours are those of sRGB under the light of day (matrix of IEC 61966-2-1).
        double[] matrix = [3.2406, -1.5372, -0.4986, -0.9689, 1.8758, 0.0415, 0.0557, -0.2040, 1.0570];
        var exif = Directory([(0x9003, Text, "2025:06:14 10:30:00\0"u8.ToArray(), 20), (0xA405, Short, Shorts(26), 1)], 0, out var exifBytes);
        List<(int Tag, int Type, byte[] Value, int Count)> entries =
        [
            (254, Long, Longs(0), 1), (256, Long, Longs(picture.Width), 1), (257, Long, Longs(picture.Height), 1), (258, Short, Shorts(16), 1),
            (259, Short, Shorts(1), 1), (262, Short, Shorts(32803), 1), (271, Text, "Example\0"u8.ToArray(), 8), (272, Text, "Raw phone\0"u8.ToArray(), 10),
            (273, Long, Longs(0), 1), (274, Short, Shorts(orientation), 1), (277, Short, Shorts(1), 1), (278, Long, Longs(picture.Height), 1),
            (279, Long, Longs(mosaic.Length), 1), (33421, Short, Shorts(2, 2), 2), (33422, Byte, [0, 1, 1, 2], 4), (34665, Long, Longs(0), 1),
            (50706, Byte, [1, 4, 0, 0], 4), (50708, Text, "Raw phone\0"u8.ToArray(), 10), (50714, Long, Longs(0), 1), (50717, Long, Longs(65535), 1),
            (50721, Ratio, Ratios(matrix), 9), (50728, 5, Ratios([1, 1, 1]), 3), (50778, Short, Shorts(21), 1),
        ];
        _ = Directory([.. entries], 8, out var length);
        Set(273, 8 + length + exifBytes);
        Set(34665, 8 + length);
        exif = Directory([(0x9003, Text, "2025:06:14 10:30:00\0"u8.ToArray(), 20), (0xA405, Short, Shorts(26), 1)], 8 + length, out _);
        return [.. "II*\0"u8, .. Longs(8), .. Directory([.. entries], 8, out _), .. exif, .. mosaic];

        void Set(int tag, int value)
        {
            var at = entries.FindIndex(e => e.Tag == tag);
            entries[at] = (tag, Long, Longs(value), 1);
        }
    }

    private static byte[] Mosaic(Mat picture)
    {
        var (width, height) = (picture.Width, picture.Height);
        var bytes = new byte[2 * width * height];
        var pixels = picture.GetUnsafeGenericIndexer<Vec3b>();
        for (var row = 0; row < height; row++)
        {
            for (var column = 0; column < width; column++)
            {
                var p = pixels[row, column];
                var stored = (row % 2, column % 2) switch { (0, 0) => p.Item2, (1, 1) => p.Item0, _ => p.Item1 };
                var v = stored / 255.0;
                var light = v <= 0.04045 ? v / 12.92 : Math.Pow((v + 0.055) / 1.055, 2.4);
                BinaryPrimitives.WriteUInt16LittleEndian(bytes.AsSpan(2 * ((row * width) + column)), (ushort)Math.Round(65535 * light));
            }
        }

        return bytes;
    }

    private static byte[] Directory((int Tag, int Type, byte[] Value, int Count)[] entries, int at, out int length)
    {
        var (head, tail) = (new List<byte>(Shorts(entries.Length)), new List<byte>());
        var start = at + 2 + (12 * entries.Length) + 4;
        foreach (var (tag, type, value, count) in entries)
        {
            head.AddRange([.. Shorts(tag, type), .. Longs(count)]);
            if (value.Length <= 4)
            {
                head.AddRange([.. value, .. new byte[4 - value.Length]]);
                continue;
            }

            head.AddRange(Longs(start + tail.Count));
            tail.AddRange(value);
            if (tail.Count % 2 == 1)
            {
                tail.Add(0);
            }
        }

        byte[] all = [.. head, .. Longs(0), .. tail];
        length = all.Length;
        return all;
    }

    private static byte[] Shorts(params int[] values) => [.. values.SelectMany(v => new[] { (byte)v, (byte)(v >> 8) })];

    private static byte[] Longs(params int[] values) => [.. values.SelectMany(v => BitConverter.GetBytes(v))];

    private static byte[] Ratios(double[] values) => [.. values.SelectMany(v => Longs((int)Math.Round(v * 10000), 10000))];
}
