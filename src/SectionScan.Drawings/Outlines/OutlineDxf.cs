using System.Globalization;
using System.Text;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Outlines;

/// <summary>Writes a bare outline as a DXF drawing of the R12 form, which every drawing program and cutter reads: one closed POLYLINE on
/// the layer <see cref="OutlineSvg.Layer"/>, the unit in $INSUNITS and $MEASUREMENT.</summary>
public static class OutlineDxf
{
    private const double MmPerInch = 25.4;
    private const int UnitInch = 1;
    private const int UnitMillimetre = 4;

    /// <summary>Writes an outline, ASCII, lines ended by \r\n as the DXF Reference has them. The stream stays open.</summary>
    /// <param name="outline">The outline, y up.</param>
    /// <param name="isInch">True: the drawing's unit is the inch.</param>
    /// <param name="stream">Where it goes.</param>
    public static void Write(Outline outline, bool isInch, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(outline);
        ArgumentNullException.ThrowIfNull(stream);
        var scale = isInch ? 1 / MmPerInch : 1;
        var text = new StringBuilder();
        Groups(text, (0, "SECTION"), (2, "HEADER"), (9, "$ACADVER"), (1, "AC1009"));
        Groups(text, (9, "$INSUNITS"), (70, isInch ? UnitInch : UnitMillimetre), (9, "$MEASUREMENT"), (70, isInch ? 0 : 1), (0, "ENDSEC"));
        Groups(text, (0, "SECTION"), (2, "TABLES"), (0, "TABLE"), (2, "LAYER"), (70, 1));
        Groups(text, (0, "LAYER"), (2, OutlineSvg.Layer), (70, 0), (62, 7), (6, "CONTINUOUS"), (0, "ENDTAB"), (0, "ENDSEC"));
        Groups(text, (0, "SECTION"), (2, "ENTITIES"));
        Groups(text, (0, "POLYLINE"), (8, OutlineSvg.Layer), (66, 1), (10, 0.0), (20, 0.0), (30, 0.0), (70, 1));
        foreach (var point in outline.Points)
        {
            Groups(text, (0, "VERTEX"), (8, OutlineSvg.Layer), (10, point.XMm * scale), (20, point.YMm * scale), (30, 0.0));
        }

        Groups(text, (0, "SEQEND"), (8, OutlineSvg.Layer), (0, "ENDSEC"), (0, "EOF"));
        stream.Write(Encoding.ASCII.GetBytes(text.ToString()));
    }

    private static void Groups(StringBuilder text, params ReadOnlySpan<(int Code, object Value)> groups)
    {
        foreach (var (code, value) in groups)
        {
            text.Append(CultureInfo.InvariantCulture, $"{code,3}\r\n");
            text.Append(value is double number ? (Math.Round(number, 6) + 0.0).ToString("0.0#####", CultureInfo.InvariantCulture) : value.ToString()).Append("\r\n");
        }
    }
}
