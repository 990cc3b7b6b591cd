using System.Buffers.Binary;

namespace SectionScan.Imaging.Photos;

/// <summary>Formats that phones write and that OpenCV does not read, told by their first bytes.</summary>
internal static class ForeignFormat
{
    private const ushort DngVersion = 50706;
    private const int EntryBytes = 12;

    // Brands of ISO/IEC 23008-12 (HEIF) with HEVC or AV1 pictures, as four letters.
    private static readonly string[] HeifBrands = ["heic", "heix", "heim", "heis", "hevc", "hevx", "mif1", "msf1", "avif", "avis"];

    /// <summary>True for a HEIF file: an ISO base media file (ISO/IEC 14496-12) whose file type box names a HEIF brand first.</summary>
    public static bool IsHeif(ReadOnlySpan<byte> bytes) =>
        bytes.Length >= 12 && bytes[4..8].SequenceEqual("ftyp"u8) && HeifBrands.Contains(System.Text.Encoding.ASCII.GetString(bytes[8..12]));

    /// <summary>True for a HEIF file with AV1 pictures.</summary>
    public static bool IsAvif(ReadOnlySpan<byte> bytes) => IsHeif(bytes) && bytes[8..11].SequenceEqual("avi"u8);

    /// <summary>True for a digital negative: a TIFF file (TIFF 6.0, section 2) whose first directory holds the tag DNGVersion (DNG
    /// specification 1.4, C612H). Its first picture is but a preview.</summary>
    public static bool IsDng(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 10)
        {
            return false;
        }

        var isLittle = bytes[..4].SequenceEqual("II*\0"u8);
        if (!isLittle && !bytes[..4].SequenceEqual("MM\0*"u8))
        {
            return false;
        }

        var directory = isLittle ? BinaryPrimitives.ReadUInt32LittleEndian(bytes[4..]) : BinaryPrimitives.ReadUInt32BigEndian(bytes[4..]);
        if (directory > (uint)bytes.Length - 2)
        {
            return false;
        }

        var at = (int)directory;
        var count = Short(bytes[at..], isLittle);
        for (var i = 0; i < count && at + 2 + (EntryBytes * (i + 1)) <= bytes.Length; i++)
        {
            if (Short(bytes[(at + 2 + (EntryBytes * i))..], isLittle) == DngVersion)
            {
                return true;
            }
        }

        return false;
    }

    private static ushort Short(ReadOnlySpan<byte> bytes, bool isLittle) =>
        isLittle ? BinaryPrimitives.ReadUInt16LittleEndian(bytes) : BinaryPrimitives.ReadUInt16BigEndian(bytes);
}
