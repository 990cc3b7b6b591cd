using System.Globalization;
using System.Text;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Quantities;

namespace SectionScan.Drawings.Formats;

/// <summary>Writes polylines as a DXF drawing at true size with its unit set. The same lines give the same bytes.</summary>
/// <remarks>
/// Form AC1015 (of the year 2000), the oldest with lightweight polylines and a drawing unit, which drawing programs and cutters read. After
/// the "DXF Reference" as published (group codes; the sections, tables and the handles that bind them; cited from memory) and checked by
/// ezdxf's audit in the tests. Layers are written in capitals; their colours are the drawing programs' own seven, in the order of first use.
/// </remarks>
public static class DxfWriter
{
    // $INSUNITS: 1 inches, 4 millimetres. $MEASUREMENT: 0 English, 1 metric.
    private const int UnitInch = 1;
    private const int UnitMillimetre = 4;

    private static readonly string[] LineTypes = ["ByBlock", "ByLayer", "Continuous"];
    private static readonly string[] Tables = ["VPORT", "LTYPE", "LAYER", "STYLE", "VIEW", "UCS", "APPID", "DIMSTYLE", "BLOCK_RECORD"];

    /// <summary>Writes a drawing, ASCII, lines ended by \r\n. The stream stays open.</summary>
    /// <param name="lines">The lines, one or more.</param>
    /// <param name="stream">Where to.</param>
    /// <param name="unit">The drawing's unit; coordinates are converted to it.</param>
    /// <exception cref="ArgumentException">No line, a line with too few corners, or a coordinate that is not finite.</exception>
    public static void Write(IReadOnlyList<DxfPolyline> lines, Stream stream, LengthUnit unit = LengthUnit.Millimetre)
    {
        ArgumentNullException.ThrowIfNull(lines);
        ArgumentNullException.ThrowIfNull(stream);
        if (lines.Count == 0 || lines.Any(line => line.Points.Count < (line.IsClosed ? 3 : 2)))
        {
            throw new ArgumentException("A drawing has at least one line of two corners, three when closed.", nameof(lines));
        }

        if (lines.Any(line => line.Points.Any(p => !double.IsFinite(p.XMm) || !double.IsFinite(p.YMm))))
        {
            throw new ArgumentException("A drawing has finite coordinates only.", nameof(lines));
        }

        stream.Write(Encoding.ASCII.GetBytes(new Drawing(lines, unit).ToString()));
    }

    /// <summary>A layer's name as written: capitals, digits, dashes and underscores, 31 characters at most.</summary>
    public static string LayerName(string layer)
    {
        ArgumentNullException.ThrowIfNull(layer);
        var name = new string([.. layer.ToUpperInvariant().Take(31).Select(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' ? c : '_')]);
        return name.Length == 0 ? "0" : name;
    }

    /// <summary>One drawing as it is put together.</summary>
    private sealed class Drawing
    {
        private readonly StringBuilder text = new();
        private readonly Dictionary<string, string> tableHandles = [];
        private readonly double perMm;
        private int lastHandle;
        private string table = string.Empty;

        public Drawing(IReadOnlyList<DxfPolyline> lines, LengthUnit unit)
        {
            perMm = unit == LengthUnit.Inch ? 1 / Inch.Mm : 1;
            var layers = lines.Select(line => LayerName(line.Layer)).Where(name => name != "0").Distinct().ToList();
            foreach (var table in Tables)
            {
                tableHandles[table] = NextHandle();
            }

            var (modelSpace, paperSpace) = (NextHandle(), NextHandle());
            Header(lines, unit);
            Section("CLASSES", () => { });
            Section("TABLES", () => WriteTables(layers, modelSpace, paperSpace));
            Section("BLOCKS", () =>
            {
                WriteBlock("*Model_Space", modelSpace, isPaper: false);
                WriteBlock("*Paper_Space", paperSpace, isPaper: true);
            });
            Section("ENTITIES", () =>
            {
                foreach (var line in lines)
                {
                    WriteLine(line, modelSpace);
                }
            });
            Section("OBJECTS", WriteObjects);
            Pair(0, "EOF");

            // Every handle lies below the next one to be given; known only now.
            text.Replace("HANDSEED-LATER", (lastHandle + 1).ToString("X", CultureInfo.InvariantCulture));
        }

        public override string ToString() => text.ToString();

        private void Header(IReadOnlyList<DxfPolyline> lines, LengthUnit unit)
        {
            var points = lines.SelectMany(line => line.Points).ToList();
            Section("HEADER", () =>
            {
                Variable("$ACADVER", () => Pair(1, "AC1015"));
                Variable("$DWGCODEPAGE", () => Pair(3, "ANSI_1252"));
                Variable("$INSUNITS", () => Pair(70, unit == LengthUnit.Inch ? UnitInch : UnitMillimetre));
                Variable("$MEASUREMENT", () => Pair(70, unit == LengthUnit.Inch ? 0 : 1));
                Variable("$LUNITS", () => Pair(70, 2));
                Variable("$EXTMIN", () => Corner(points.Min(p => p.XMm), points.Min(p => p.YMm)));
                Variable("$EXTMAX", () => Corner(points.Max(p => p.XMm), points.Max(p => p.YMm)));
                Variable("$HANDSEED", () => Pair(5, "HANDSEED-LATER"));
            });

            void Corner(double xMm, double yMm)
            {
                Pair(10, xMm * perMm);
                Pair(20, yMm * perMm);
                Pair(30, 0.0);
            }
        }

        private void WriteTables(List<string> layers, string modelSpace, string paperSpace)
        {
            Table("VPORT", () =>
            {
                Record("VPORT", "AcDbViewportTableRecord", "*Active");
                foreach (var (code, value) in new (int, double)[]
                    { (10, 0), (20, 0), (11, 1), (21, 1), (12, 0), (22, 0), (13, 0), (23, 0), (14, 10), (24, 10), (15, 10), (25, 10), (16, 0), (26, 0), (36, 1), (17, 0), (27, 0), (37, 0), (40, 200), (41, 1.5), (42, 50), (43, 0), (44, 0), (50, 0), (51, 0) })
                {
                    Pair(code, value);
                }
            });
            Table("LTYPE", () =>
            {
                foreach (var name in LineTypes)
                {
                    Record("LTYPE", "AcDbLinetypeTableRecord", name);
                    Pair(3, string.Empty);
                    Pair(72, 65);
                    Pair(73, 0);
                    Pair(40, 0.0);
                }
            });
            Table("LAYER", () =>
            {
                // 7 is black or white, as the background asks; 1 to 6 are red, yellow, green, cyan, blue, magenta.
                Layer("0", 7);
                for (var i = 0; i < layers.Count; i++)
                {
                    Layer(layers[i], i == 0 ? 7 : ((i - 1) % 6) + 1);
                }
            });
            Table("STYLE", () =>
            {
                Record("STYLE", "AcDbTextStyleTableRecord", "Standard");
                Pair(40, 0.0);
                Pair(41, 1.0);
                Pair(50, 0.0);
                Pair(71, 0);
                Pair(42, 2.5);
                Pair(3, "txt");
                Pair(4, string.Empty);
            });
            Table("VIEW", () => { });
            Table("UCS", () => { });
            Table("APPID", () => Record("APPID", "AcDbRegAppTableRecord", "ACAD"));
            Table("DIMSTYLE", () => { });
            Table("BLOCK_RECORD", () =>
            {
                Record("BLOCK_RECORD", "AcDbBlockTableRecord", "*Model_Space", modelSpace);
                Record("BLOCK_RECORD", "AcDbBlockTableRecord", "*Paper_Space", paperSpace);
            });

            void Layer(string name, int colour)
            {
                Record("LAYER", "AcDbLayerTableRecord", name);
                Pair(62, colour);
                Pair(6, "Continuous");
            }
        }

        private void Table(string name, Action records)
        {
            Pair(0, "TABLE");
            Pair(2, name);
            Pair(5, tableHandles[name]);
            Pair(330, "0");
            Pair(100, "AcDbSymbolTable");

            // How many records follow is read as a hint only; readers count for themselves.
            Pair(70, 0);
            if (name == "DIMSTYLE")
            {
                Pair(100, "AcDbDimStyleTable");
            }

            table = name;
            records();
            Pair(0, "ENDTAB");
        }

        private void Record(string type, string subclass, string name, string? handle = null)
        {
            Pair(0, type);
            Pair(5, handle ?? NextHandle());
            Pair(330, tableHandles[table]);
            Pair(100, "AcDbSymbolTableRecord");
            Pair(100, subclass);
            Pair(2, name);
            if (type != "BLOCK_RECORD")
            {
                Pair(70, 0);
            }
        }

        private void WriteBlock(string name, string owner, bool isPaper)
        {
            Entity("BLOCK", owner, "0", isPaper);
            Pair(100, "AcDbBlockBegin");
            Pair(2, name);
            Pair(70, 0);
            Pair(10, 0.0);
            Pair(20, 0.0);
            Pair(30, 0.0);
            Pair(3, name);
            Pair(1, string.Empty);
            Entity("ENDBLK", owner, "0", isPaper);
            Pair(100, "AcDbBlockEnd");
        }

        private void WriteLine(DxfPolyline line, string owner)
        {
            Entity("LWPOLYLINE", owner, LayerName(line.Layer), isPaper: false);
            Pair(100, "AcDbPolyline");
            Pair(90, line.Points.Count);
            Pair(70, line.IsClosed ? 1 : 0);
            foreach (var point in line.Points)
            {
                Pair(10, point.XMm * perMm);
                Pair(20, point.YMm * perMm);
            }
        }

        private void Entity(string type, string owner, string layer, bool isPaper)
        {
            Pair(0, type);
            Pair(5, NextHandle());
            Pair(330, owner);
            Pair(100, "AcDbEntity");
            if (isPaper)
            {
                Pair(67, 1);
            }

            Pair(8, layer);
        }

        private void WriteObjects()
        {
            var (root, groups) = (NextHandle(), NextHandle());
            Dictionary(root, "0");
            Pair(3, "ACAD_GROUP");
            Pair(350, groups);
            Dictionary(groups, root);

            void Dictionary(string handle, string owner)
            {
                Pair(0, "DICTIONARY");
                Pair(5, handle);
                Pair(330, owner);
                Pair(100, "AcDbDictionary");
                Pair(281, 1);
            }
        }

        private void Section(string name, Action content)
        {
            Pair(0, "SECTION");
            Pair(2, name);
            content();
            Pair(0, "ENDSEC");
        }

        private void Variable(string name, Action value)
        {
            Pair(9, name);
            value();
        }

        private string NextHandle() => (++lastHandle).ToString("X", CultureInfo.InvariantCulture);

        private void Pair(int code, string value) => text.Append(CultureInfo.InvariantCulture, $"{code,3}\r\n{value}\r\n");

        private void Pair(int code, int value) => Pair(code, value.ToString(CultureInfo.InvariantCulture));

        // A millionth of a millimetre; adding zero turns −0 into 0.
        private void Pair(int code, double value) => Pair(code, (Math.Round(value, 6) + 0.0).ToString("0.0#####", CultureInfo.InvariantCulture));
    }
}
