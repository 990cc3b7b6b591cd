using System.Globalization;
using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Outlines;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Sections;
using SectionScan.Testing.Witnesses;

namespace SectionScan.Drawings.Tests.Outlines;

/// <summary>Drawings written by ezdxf (Debian's python3-ezdxf), a general-purpose DXF library, with the areas that it finds itself.</summary>
public sealed class EzdxfWitnessTests : IDisposable
{
    // Each case: a name, then code that draws on the modelspace `m`; ezdxf flattens what it drew and adds up the area.
    private const string Script =
        """
        import sys, math
        import ezdxf
        folder = sys.argv[1]
        def case(name, version, unit, draw):
            doc = ezdxf.new(version)
            if version != 'R12':
                doc.units = unit
            m = doc.modelspace()
            draw(m)
            doc.saveas(f'{folder}/{name}.dxf')
            points = []
            for e in m:
                for part in e.virtual_entities() if 'POLYLINE' in e.dxftype() else [e]:
                    flat = [part.dxf.start, part.dxf.end] if part.dxftype() == 'LINE' else list(part.flattening(0.00001))
                    flat = [(v.x, v.y) for v in flat]
                    if points and math.dist(points[-1], flat[0]) > math.dist(points[-1], flat[-1]):
                        flat.reverse()
                    points += flat if not points else flat[1:]
            area = sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(points, points[1:] + points[:1])) / 2
            print(name, repr(abs(area)))
        port = [(0, 0, 0), (20, -4, 0), (38, 2, 0), (41, 17, 0), (30, 29, 0), (12, 30, 0), (-2, 18, 0)]
        case('circle', 'R2010', ezdxf.units.MM, lambda m: m.add_circle((3, 4), 17.5))
        case('ellipse', 'R2010', ezdxf.units.MM, lambda m: m.add_ellipse((1, 2), (12, 9), 0.6))
        case('lwpolyline', 'R2000', ezdxf.units.IN, lambda m: m.add_lwpolyline(
            [(0, 0, 0.2), (1.4, 0, -0.1), (1.5, 1, 0.5), (0.2, 1.1, 0)], format='xyb', close=True))
        case('polyline', 'R12', None, lambda m: m.add_polyline2d(
            [(0, 0, 0.3), (30, 0, 0.0), (33, 20, 0.4), (2, 24, -0.05)], format='xyb', close=True))
        case('spline', 'R2010', ezdxf.units.MM, lambda m: m.add_spline().set_closed(port))
        case('rational', 'R2010', ezdxf.units.CM, lambda m: m.add_spline().set_closed_rational(
            [(x / 10, y / 10, 0) for x, y, z in port], [1, 2, 1, 3, 1, 1, 2]))
        def arcs(m):
            m.add_line((6, 14), (-6, 14))
            m.add_arc((-6, 0), 14, 90, 270)
            m.add_line((-6, -14), (6, -14))
            m.add_arc((6, 0), 14, 270, 90)
        case('arcs', 'R2010', ezdxf.units.MM, arcs)
        """;

    private readonly DirectoryInfo folder = Directory.CreateTempSubdirectory("sectionscan-");

    public void Dispose() => folder.Delete(recursive: true);

    [Theory]
    [InlineData(LengthUnit.Millimetre, 1.0)]
    [InlineData(LengthUnit.Inch, 25.4)]
    public void An_outline_that_is_written_is_read_back(LengthUnit unit, double mmPerUnit)
    {
        var outline = SampleSections.Blob(4, 720);
        using var stream = new MemoryStream();
        DxfWriter.Write([DxfPolyline.Of(outline)], stream, unit);

        var back = OutlineFile.Read(Encoding.ASCII.GetString(stream.ToArray()), "outline.dxf", new()).ValueOrThrow();

        Assert.Equal(mmPerUnit, back.MmPerUnit);
        Assert.Equal(outline.Count, back.Outline.Count);
        Assert.All(outline.Points.ToArray().Zip(back.Outline.Points.ToArray()), pair => Assert.Equal(0, pair.First.DistanceTo(pair.Second), 3e-5)); // six decimals of a unit
    }

    [Fact]
    public void Drawings_of_every_kind_of_entity_have_the_area_that_ezdxf_finds()
    {
        var found = DebianPython.Run(Script, folder.FullName).Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(line => line.Split(' ')).ToList();

        Assert.Equal(7, found.Count);
        Assert.All(found, line =>
        {
            var path = Path.Combine(folder.FullName, line[0] + ".dxf");
            var choice = line[0] == "polyline" ? new OutlineChoice(MmPerUnit: 1) : new OutlineChoice(); // R12 has no unit
            var chosen = OutlineFile.Read(File.ReadAllText(path), path, choice).ValueOrThrow();
            var areaUnits = PolygonMoments.Of(chosen.Outline.Points).AreaMm2 / (chosen.MmPerUnit * chosen.MmPerUnit);
            var expected = double.Parse(line[1], CultureInfo.InvariantCulture);

            Assert.Equal(line[0] switch { "lwpolyline" => 25.4, "rational" => 10, _ => 1 }, chosen.MmPerUnit);
            Assert.Equal(expected, areaUnits, expected * 5e-5); // both cut curves into chords; ezdxf to 0.00001 units
        });
    }
}
