using System.Globalization;
using System.Text;
using SectionScan.Metrology.Solids;

namespace SectionScan.Drawings.Solids;

/// <summary>Writes a solid as a Wavefront OBJ text in millimetres: corners once, then the triangles.</summary>
public static class ObjWriter
{
    /// <summary>Writes the solid.</summary>
    public static void Write(TriangleMesh mesh, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(mesh);
        ArgumentNullException.ThrowIfNull(stream);
        var text = new StringBuilder("# SectionScan, millimetres, x with the flow, z toward the roof\no port\n");
        foreach (var v in mesh.Vertices)
        {
            text.Append(CultureInfo.InvariantCulture, $"v {v.XMm:0.#####} {v.YMm:0.#####} {v.ZMm:0.#####}\n");
        }

        foreach (var (a, b, c) in mesh.Triangles)
        {
            text.Append(CultureInfo.InvariantCulture, $"f {a + 1} {b + 1} {c + 1}\n");
        }

        stream.Write(Encoding.ASCII.GetBytes(text.ToString()));
    }
}
