using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Solids;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Solids;
using SectionScan.Porting.Lofts;
using SectionScan.Testing.Shapes;
using SectionScan.Testing.Truth;

namespace SectionScan.Drawings.Tests.Solids;

public sealed class SolidWriterTests
{
    private static readonly Loft Bend = Loft.Of(
        "bend",
        [
            new(1, AnalyticShapes.Superellipse(17, 19, 2.6), 0, default), new(2, AnalyticShapes.DSection(18, 6), 40, Angle.FromDegrees(20)),
            new(3, AnalyticShapes.Circle(16), 75, Angle.FromDegrees(60)),
        ]).ValueOrThrow();

    public static TheoryData<string> Solids => ["bend", "exemplar"];

    /// <summary>Debian's admesh judges the STL: closed, nothing to mend, and the same volume.</summary>
    [SkippableTheory]
    [MemberData(nameof(Solids))]
    public void The_STL_is_watertight_for_an_outside_checker(string name)
    {
        Skip.IfNot(IsThere("admesh", "--version"), "admesh is not installed; src/system-packages.sh --tests brings it.");
        var mesh = LoftOf(name).ToMesh();
        using var file = new Written("stl", stream => StlWriter.Write(mesh, stream));

        // Checks alone, nothing mended: --exact compares corners without tolerance.
        var report = Said("admesh", "--exact", file.Path);

        Assert.Equal(0, Figure(report, @"Total disconnected facets\s*:\s*(\d+)"));
        Assert.Equal(mesh.Triangles.Count, Figure(report, @"Number of facets\s*:\s*(\d+)"));
        Assert.Equal(0, Figure(report, @"Degenerate facets\s*:\s*(\d+)"));
        Assert.Equal(0, Figure(report, @"Facets reversed\s*:\s*(\d+)"));
        Assert.Equal(0, Figure(report, @"Backwards edges\s*:\s*(\d+)"));

        // Single precision and admesh's own rounding.
        Assert.Equal(1, Figure(report, @"Volume\s*:\s*([\d.]+)") / mesh.VolumeMm3, 1e-4);
    }

    /// <summary>Debian's assimp, a reader of its own, reads both forms for viewing: every corner and triangle, glTF in metres and y up.</summary>
    [SkippableTheory]
    [InlineData("glb", 0.001)]
    [InlineData("obj", 1)]
    public void The_forms_for_viewing_are_read_by_an_outside_reader(string form, double unit)
    {
        Skip.IfNot(IsThere("assimp", "version"), "assimp is not installed; src/system-packages.sh --tests brings it.");
        var mesh = LoftOf("exemplar").ToMesh();
        using var file = new Written(form, stream =>
        {
            if (form == "glb")
            {
                GltfWriter.Write(mesh, stream, "exemplar");
            }
            else
            {
                ObjWriter.Write(mesh, stream);
            }
        });

        var report = Said("assimp", "info", file.Path);

        Assert.Equal(mesh.Vertices.Count, Figure(report, @"\nVertices:\s*(\d+)"));
        Assert.Equal(mesh.Triangles.Count, Figure(report, @"\nFaces:\s*(\d+)"));
        Assert.Equal(unit * mesh.Vertices.Max(v => v.XMm), Figure(report, @"Maximum point\s*\(([\d.-]+)"), 1e-5 * 120 * unit);
        var up = form == "glb" ? @"Maximum point\s*\(\S+ ([\d.-]+)" : @"Maximum point\s*\(\S+ \S+ ([\d.-]+)";
        Assert.Equal(unit * mesh.Vertices.Max(v => v.ZMm), Figure(report, up), 1e-5 * 120 * unit);
    }

    [Fact]
    public void The_glTF_reads_back_with_its_places_in_metres_and_y_up()
    {
        var mesh = Bend.ToMesh();
        using var stream = new MemoryStream();
        GltfWriter.Write(mesh, stream, "bend");

        // Read by the library that the format's makers list; its reader checks the file against the standard.
        var model = SharpGLTF.Schema2.ModelRoot.ReadGLB(new MemoryStream(stream.ToArray()));
        var primitive = Assert.Single(Assert.Single(model.LogicalMeshes).Primitives);
        var places = primitive.GetVertexAccessor("POSITION").AsVector3Array();

        Assert.Equal(mesh.Vertices.Count, places.Count);
        Assert.Equal(3 * mesh.Triangles.Count, primitive.IndexAccessor.Count);
        Assert.Equal(mesh.Vertices.Max(v => v.ZMm) / 1000, places.Max(p => p.Y), 1e-6);
        Assert.Equal(mesh.Vertices.Max(v => v.XMm) / 1000, places.Max(p => p.X), 1e-6);
    }

    [Fact]
    public void The_OBJ_holds_every_corner_once_and_every_triangle()
    {
        var mesh = Bend.ToMesh();
        using var stream = new MemoryStream();
        ObjWriter.Write(mesh, stream);
        var lines = System.Text.Encoding.ASCII.GetString(stream.ToArray()).Split('\n');

        var places = lines.Where(line => line.StartsWith("v ", StringComparison.Ordinal))
            .Select(line => line.Split(' ').Skip(1).Select(n => double.Parse(n, CultureInfo.InvariantCulture)).ToArray())
            .Select(n => new SpacePoint(n[0], n[1], n[2])).ToList();
        var faces = lines.Where(line => line.StartsWith("f ", StringComparison.Ordinal))
            .Select(line => line.Split(' ').Skip(1).Select(n => int.Parse(n, CultureInfo.InvariantCulture) - 1).ToArray()).Select(n => (n[0], n[1], n[2])).ToList();

        var back = new TriangleMesh(places, faces);
        Assert.True(back.IsClosed);
        Assert.Equal(1, back.VolumeMm3 / mesh.VolumeMm3, 1e-6);
    }

    [Fact]
    public void The_preview_shows_three_sides()
    {
        var page = LoftDrawing.Build(Bend, "bend", ["a note"], LengthUnit.Millimetre);

        Assert.Equal(3, page.Items.OfType<SectionScan.Drawings.Pages.TextItem>().Count(text => text.Text.StartsWith("from", StringComparison.Ordinal) || text.Text.StartsWith("aslant", StringComparison.Ordinal)));
        Assert.All(
            page.Items.OfType<SectionScan.Drawings.Pages.PathItem>().SelectMany(path => path.Contours).SelectMany(contour => contour.Points),
            point => Assert.True(point.XMm >= 0 && point.XMm <= page.WidthMm && point.YMm >= 0 && point.YMm <= page.HeightMm));
    }

    private static double Figure(string report, string pattern) =>
        double.Parse(Regex.Match(report, pattern).Groups[1].Value, CultureInfo.InvariantCulture);

    // The true outlines of the photos p01 and p02, at the stations of sample-images/exemplar.job.json.
    private static Loft LoftOf(string name)
    {
        if (name == "bend")
        {
            return Bend;
        }

        double[] at = [4, 22, 50, 64, 78, 94, 106, 118];
        double[] turn = [0, 0, 4, 9, 18, 34, 52, 68];
        var sections = new[] { "p01", "p02" }.SelectMany(photo => SamplePhotos.TruthOf(photo).Sections).OrderBy(section => section.Station).ToList();
        return Loft.Of(name, [.. sections.Select((section, i) => new LoftStation(
            section.Station!.Value, Outline.From(section.Outline).ValueOrThrow(), at[i], Angle.FromDegrees(turn[i])))]).ValueOrThrow();
    }

    private static bool IsThere(string program, string argument)
    {
        try
        {
            return Said(program, argument).Length > 0;
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return false;
        }
    }

    private static string Said(string program, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(program, arguments) { RedirectStandardOutput = true })!;
        var said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return said;
    }

    private sealed class Written : IDisposable
    {
        public Written(string form, Action<Stream> write)
        {
            Path = System.IO.Path.Combine(System.IO.Path.GetTempPath(), $"{Guid.NewGuid():N}.{form}");
            using var stream = File.Create(Path);
            write(stream);
        }

        public string Path { get; }

        public void Dispose() => File.Delete(Path);
    }
}
