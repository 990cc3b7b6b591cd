namespace SectionScan.Imaging.Photos;

/// <summary>Whether a JPEG file is whole. The decoder fills what is missing with grey and says nothing.</summary>
internal static class JpegEnd
{
    /// <summary>True for a JPEG (ITU-T T.81) whose end-of-image marker FF D9 is not found after its last scan.</summary>
    /// <remarks>Phones append data of their own behind the marker, so the whole rest is searched; inside a scan FF is followed by
    /// 00 or a restart marker, so FF D9 stands nowhere else in it.</remarks>
    public static bool IsMissing(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 4 || bytes[0] != 0xFF || bytes[1] != 0xD8)
        {
            return false;
        }

        var scan = LastScan(bytes);
        return scan < 0 || bytes[scan..].IndexOf([(byte)0xFF, (byte)0xD9]) < 0;
    }

    private static int LastScan(ReadOnlySpan<byte> bytes)
    {
        // Walk the marker segments from the start: thumbnails inside them have markers of their own.
        var at = 2;
        while (at + 4 <= bytes.Length && bytes[at] == 0xFF)
        {
            var marker = bytes[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            if (marker == 0xDA)
            {
                return at;
            }

            at += 2 + ((bytes[at + 2] << 8) | bytes[at + 3]);
        }

        return -1;
    }
}
