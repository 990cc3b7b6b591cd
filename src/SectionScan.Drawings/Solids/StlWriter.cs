using System.Buffers.Binary;
using System.Text;
using SectionScan.Metrology.Solids;

namespace SectionScan.Drawings.Solids;

/// <summary>Writes a solid as binary STL in millimetres, for milling and printing. Corners that are one stay equal to the last bit, so
/// that a closed surface stays closed.</summary>
public static class StlWriter
{
    private const int HeadLength = 80;
    private const int TriangleLength = 50;

    /// <summary>Writes the solid.</summary>
    public static void Write(TriangleMesh mesh, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(stream);
        var bytes = new byte[HeadLength + 4 + (mesh.Triangles.Count * TriangleLength)];

        // Not beginning with "solid": readers take that for the text form.
        Encoding.ASCII.GetBytes("SectionScan, millimetres").CopyTo(bytes, 0);
        BinaryPrimitives.WriteInt32LittleEndian(bytes.AsSpan(HeadLength), mesh.Triangles.Count);
        var at = HeadLength + 4;
        foreach (var triangle in mesh.Triangles)
        {
            var place = bytes.AsSpan(at);
            foreach (var point in new[] { mesh.NormalOf(triangle), mesh.Vertices[triangle.A], mesh.Vertices[triangle.B], mesh.Vertices[triangle.C] })
            {
                BinaryPrimitives.WriteSingleLittleEndian(place, (float)point.XMm);
                BinaryPrimitives.WriteSingleLittleEndian(place[4..], (float)point.YMm);
                BinaryPrimitives.WriteSingleLittleEndian(place[8..], (float)point.ZMm);
                place = place[12..];
            }

            at += TriangleLength;
        }

        stream.Write(bytes);
    }
}
