using System.Buffers.Binary;
using System.Text;

namespace SectionScan.Testing.Rendering;

/// <summary>Writes the EXIF segment into a JPEG without touching its pixels. Source: CIPA DC-008 (Exif 2.32), TIFF 6.0.</summary>
public static class ExifSegment
{
    /// <summary>The same JPEG with an APP1 segment after its first marker.</summary>
    public static byte[] InsertedInto(byte[] jpeg, PhotoLabel label, int orientation)
    {
        var tiff = Tiff(label, orientation);
        var length = 2 + 6 + tiff.Length;
        using var file = new MemoryStream(jpeg.Length + length + 2);
        file.Write(jpeg, 0, 2);
        file.Write([0xFF, 0xE1, (byte)(length >> 8), (byte)length]);
        file.Write("Exif\0\0"u8);
        file.Write(tiff);
        file.Write(jpeg, 2, jpeg.Length - 2);
        return file.ToArray();
    }

    private static byte[] Tiff(PhotoLabel label, int orientation)
    {
        // Two directories, then the texts; big-endian.
        (ushort Tag, object Value)[] main = [(0x010F, label.Make), (0x0110, label.Model), (0x0112, (ushort)orientation), (0x8769, 0u)];
        (ushort Tag, object Value)[] exif = [(0x9003, label.TakenAt), (0xA405, (ushort)label.FocalLength35Mm)];
        const int Header = 8;
        var exifAt = Header + 2 + (12 * main.Length) + 4;
        main[3].Value = (uint)exifAt;
        var textAt = exifAt + 2 + (12 * exif.Length) + 4;
        using var file = new MemoryStream();
        using var texts = new MemoryStream();
        file.Write([0x4D, 0x4D, 0x00, 0x2A, 0, 0, 0, Header]);
        Directory(main);
        Directory(exif);
        texts.WriteTo(file);
        return file.ToArray();

        void Directory((ushort Tag, object Value)[] entries)
        {
            Span<byte> entry = stackalloc byte[12];
            BinaryPrimitives.WriteUInt16BigEndian(entry, (ushort)entries.Length);
            file.Write(entry[..2]);
            foreach (var (tag, value) in entries)
            {
                entry.Clear();
                BinaryPrimitives.WriteUInt16BigEndian(entry, tag);
                switch (value)
                {
                    case ushort number:
                        BinaryPrimitives.WriteUInt16BigEndian(entry[2..], 3);
                        BinaryPrimitives.WriteUInt32BigEndian(entry[4..], 1);
                        BinaryPrimitives.WriteUInt16BigEndian(entry[8..], number);
                        break;
                    case uint number:
                        BinaryPrimitives.WriteUInt16BigEndian(entry[2..], 4);
                        BinaryPrimitives.WriteUInt32BigEndian(entry[4..], 1);
                        BinaryPrimitives.WriteUInt32BigEndian(entry[8..], number);
                        break;
                    case string text:
                        var bytes = Encoding.ASCII.GetBytes(text + "\0");
                        BinaryPrimitives.WriteUInt16BigEndian(entry[2..], 2);
                        BinaryPrimitives.WriteUInt32BigEndian(entry[4..], (uint)bytes.Length);
                        if (bytes.Length <= 4)
                        {
                            bytes.CopyTo(entry[8..]);
                            break;
                        }

                        BinaryPrimitives.WriteUInt32BigEndian(entry[8..], (uint)(textAt + texts.Length));
                        texts.Write(bytes);
                        if (texts.Length % 2 == 1)
                        {
                            texts.WriteByte(0);
                        }

                        break;
                }

                file.Write(entry);
            }

            file.Write([0, 0, 0, 0]);
        }
    }
}
