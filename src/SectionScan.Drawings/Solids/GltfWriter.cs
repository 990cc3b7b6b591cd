using System.Numerics;
using System.Runtime.InteropServices;
using SectionScan.Metrology.Solids;
using SharpGLTF.Memory;
using SharpGLTF.Schema2;

namespace SectionScan.Drawings.Solids;

/// <summary>Writes a solid as binary glTF 2.0 (.glb, Khronos Group), for viewing: metres, y up.</summary>
public static class GltfWriter
{
    private const float MetresPerMm = 0.001f;

    /// <summary>Writes the solid.</summary>
    /// <param name="mesh">The surface, mm, z up.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="name">What it shows.</param>
    public static void Write(TriangleMesh mesh, Stream stream, string name)
    {
        ArgumentNullException.ThrowIfNull(mesh);

        // z up becomes y up: (x, y, z) → (x, z, −y).
        Vector3[] places = [.. mesh.Vertices.Select(v => new Vector3((float)v.XMm, (float)v.ZMm, (float)-v.YMm) * MetresPerMm)];
        uint[] indices = [.. mesh.Triangles.SelectMany(t => new[] { (uint)t.A, (uint)t.B, (uint)t.C })];
        var model = ModelRoot.CreateModel();
        model.Asset.Generator = "SectionScan";
        var primitive = model.CreateMesh(name).CreatePrimitive();
        primitive.SetVertexAccessor("POSITION", Vertices(model, places));
        primitive.SetVertexAccessor("NORMAL", Vertices(model, Normals(mesh, places.Length)));
        var view = model.UseBufferView(MemoryMarshal.AsBytes<uint>(indices).ToArray(), 0, null, 0, BufferMode.ELEMENT_ARRAY_BUFFER);
        var accessor = model.CreateAccessor();
        accessor.SetIndexData(view, 0, indices.Length, IndexEncodingType.UNSIGNED_INT);
        primitive.SetIndexAccessor(accessor);
        primitive.DrawPrimitiveType = PrimitiveType.TRIANGLES;
        primitive.Material = Rubber(model);
        model.UseScene(name).CreateNode(name).Mesh = model.LogicalMeshes[0];
        model.WriteGLB(stream);
    }

    private static Material Rubber(ModelRoot model)
    {
        var material = model.CreateMaterial("port");
        material.InitializePBRMetallicRoughness();
        var colour = material.FindChannel("BaseColor")!.Value;
        colour.Color = new Vector4(0.55f, 0.62f, 0.72f, 1);
        var surface = material.FindChannel("MetallicRoughness")!.Value;
        surface.SetFactor("MetallicFactor", 0);
        surface.SetFactor("RoughnessFactor", 0.8f);
        return material;
    }

    private static Accessor Vertices(ModelRoot model, Vector3[] vectors)
    {
        var view = model.UseBufferView(MemoryMarshal.AsBytes<Vector3>(vectors).ToArray(), 0, null, 0, BufferMode.ARRAY_BUFFER);
        var accessor = model.CreateAccessor();
        accessor.SetVertexData(view, 0, vectors.Length, AttributeFormat.Float3);
        return accessor;
    }

    /// <summary>At each corner the mean direction of the triangles that meet there, weighted by their areas.</summary>
    private static Vector3[] Normals(TriangleMesh mesh, int count)
    {
        var normals = new Vector3[count];
        foreach (var (a, b, c) in mesh.Triangles)
        {
            var cross = (mesh.Vertices[b] - mesh.Vertices[a]).Cross(mesh.Vertices[c] - mesh.Vertices[a]);
            var turned = new Vector3((float)cross.XMm, (float)cross.ZMm, (float)-cross.YMm);
            normals[a] += turned;
            normals[b] += turned;
            normals[c] += turned;
        }

        return Array.ConvertAll(normals, n => n.LengthSquared() > 0 ? Vector3.Normalize(n) : Vector3.UnitY);
    }
}
