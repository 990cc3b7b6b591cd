using System.Globalization;
using System.Text.Json;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;
using SectionScan.Testing.Witnesses;

namespace SectionScan.Drawings.Tests.Formats;

/// <summary>The drawings are read by ezdxf (Debian python3-ezdxf).</summary>
public sealed class DxfWriterTests : IDisposable
{
    /// <summary>What the issue of templates asks: the same area to 0.01 %.</summary>
    private const double AreaShare = 1e-4;

    private const string Reader =
        """
        import json, sys, ezdxf
        drawing = ezdxf.readfile(sys.argv[1])
        audit = drawing.audit()
        def area(e):
            p = list(e.get_points('xy'))
            return sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(p, p[1:] + p[:1])) / 2
        print(json.dumps({
            'errors': [e.message for e in audit.errors], 'fixes': [e.message for e in audit.fixes],
            'version': drawing.dxfversion, 'units': drawing.header['$INSUNITS'], 'metric': drawing.header['$MEASUREMENT'],
            'layers': [l.dxf.name for l in drawing.layers],
            'lines': [{'type': e.dxftype(), 'layer': e.dxf.layer, 'closed': bool(e.closed), 'count': len(e), 'area': area(e)} for e in drawing.modelspace()]}))
        """;

    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-dxf-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void An_outline_comes_back_as_one_closed_polyline_of_the_same_area(int number)
    {
        var outline = SampleSections.Blob(number, 720);

        var read = Read([DxfPolyline.Of(outline)], LengthUnit.Millimetre);

        Assert.Empty(read.Errors);
        Assert.Empty(read.Fixes);
        Assert.Equal(("AC1015", 4, 1), (read.Version, read.Units, read.Metric));
        var line = Assert.Single(read.Lines);
        Assert.Equal(("LWPOLYLINE", "OUTLINE", true, 720), (line.Type, line.Layer, line.Closed, line.Count));
        var areaMm2 = PolygonMoments.Of(outline.Points).AreaMm2;
        Assert.Equal(areaMm2, line.Area, AreaShare * areaMm2);
    }

    [Fact]
    public void Inches_are_written_as_inches_and_said_to_be()
    {
        var outline = SampleSections.Ellipse(40, 28);

        var read = Read([DxfPolyline.Of(outline)], LengthUnit.Inch);

        // One square inch is 645.16 mm² (NIST SP 811, appendix B).
        Assert.Equal((1, 0), (read.Units, read.Metric));
        Assert.Equal(PolygonMoments.Of(outline.Points).AreaMm2 / 645.16, Assert.Single(read.Lines).Area, 1e-5);
    }

    [Fact]
    public void Each_line_keeps_its_layer_and_says_whether_it_is_closed()
    {
        var read = Read(
            [
                DxfPolyline.Of(SampleSections.Ellipse(40, 28), "cut-plug"),
                new("centre", [new(-10, 0), new(10, 0)], IsClosed: false),
                new("Ölkanal 1", [new(0, 0), new(1, 0), new(0, 1)], IsClosed: true),
            ],
            LengthUnit.Millimetre);

        Assert.Empty(read.Errors);
        Assert.Equal(["CUT-PLUG", "CENTRE", "_LKANAL_1"], read.Lines.Select(line => line.Layer));
        Assert.Equal([true, false, true], read.Lines.Select(line => line.Closed));
        Assert.Superset(new HashSet<string> { "0", "CUT-PLUG", "CENTRE", "_LKANAL_1" }, read.Layers.ToHashSet());
    }

    [Fact]
    public void The_same_lines_give_the_same_bytes()
    {
        static byte[] Write()
        {
            using var stream = new MemoryStream();
            DxfWriter.Write([DxfPolyline.Of(SampleSections.Blob(5))], stream);
            return stream.ToArray();
        }

        Assert.Equal(Write(), Write());
    }

    [Fact]
    public void Nothing_and_half_a_line_and_no_number_are_refused()
    {
        Assert.Throws<ArgumentException>(() => DxfWriter.Write([], Stream.Null));
        Assert.Throws<ArgumentException>(() => DxfWriter.Write([new("a", [new(0, 0)], IsClosed: false)], Stream.Null));
        Assert.Throws<ArgumentException>(() => DxfWriter.Write([new("a", [new(0, 0), new(1, 0)], IsClosed: true)], Stream.Null));
        Assert.Throws<ArgumentException>(() => DxfWriter.Write([new("a", [new(0, 0), new(double.NaN, 0)], IsClosed: false)], Stream.Null));
    }

    private Drawing Read(IReadOnlyList<DxfPolyline> lines, LengthUnit unit)
    {
        var path = Path.Combine(folder, string.Create(CultureInfo.InvariantCulture, $"{lines.Count}.dxf"));
        using (var file = File.Create(path))
        {
            DxfWriter.Write(lines, file, unit);
        }

        return JsonSerializer.Deserialize<Drawing>(DebianPython.Run(Reader, path), JsonSerializerOptions.Web)!;
    }

    private sealed record Drawing(string[] Errors, string[] Fixes, string Version, int Units, int Metric, string[] Layers, Line[] Lines);

    private sealed record Line(string Type, string Layer, bool Closed, int Count, double Area);
}
