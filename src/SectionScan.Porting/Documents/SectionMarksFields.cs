using System.Text.Json;
using SectionScan.Metrology.Frames;

namespace SectionScan.Porting.Documents;

/// <summary>The marks of a section as fields of its document. Written only when there are any, so that documents without stay as they
/// were.</summary>
internal static class SectionMarksFields
{
    /// <summary>More marks than this belong to no section.</summary>
    private const int MostPoints = 100;

    public static void Write(Utf8JsonWriter json, SectionMarks marks)
    {
        if (marks.IsEmpty)
        {
            return;
        }

        json.WriteStartObject("marks");
        Write(json, "guideAxis", marks.GuideAxis);
        Write(json, "floorLine", marks.FloorLine);
        json.WriteStartObject("points");
        foreach (var (name, point) in marks.Points.OrderBy(each => each.Key, StringComparer.Ordinal))
        {
            json.WritePropertyName(name);
            json.WriteRawValue(Text(point));
        }

        json.WriteEndObject();
        json.WriteEndObject();
    }

    public static SectionMarks Read(DocumentFieldReader reader, DocumentField field)
    {
        var axis = Line(reader, reader.Member(field, "guideAxis"));
        var floor = Line(reader, reader.Member(field, "floorLine"));
        var points = reader.Member(field, "points");
        var named = reader.Members(points);
        if (named.Count > MostPoints)
        {
            reader.Unusable(points, $"at most {MostPoints} points");
        }

        return new(axis, floor, named.ToDictionary(each => each.Name, each => Point(reader, each.Value)));
    }

    private static void Write(Utf8JsonWriter json, string name, SectionLine? line)
    {
        json.WritePropertyName(name);
        json.WriteRawValue(line is null ? "null" : $"[{Text(line.From)}, {Text(line.To)}]");
    }

    private static SectionLine? Line(DocumentFieldReader reader, DocumentField field)
    {
        if (field.IsNull || reader.FirstProblem is not null)
        {
            return null;
        }

        var ends = reader.Items(field, 2);
        if (ends.Count != 2)
        {
            reader.Unusable(field, "two points [[x, y], [x, y]], or null");
            return null;
        }

        var line = new SectionLine(Point(reader, ends[0]), Point(reader, ends[1]));
        if (line.LengthMm < SectionLine.ShortestMm)
        {
            reader.Unusable(field, $"two points at least {SectionLine.ShortestMm} mm apart");
        }

        return line;
    }

    private static SectionPoint Point(DocumentFieldReader reader, DocumentField field)
    {
        var (x, y) = reader.Pair(field);
        return new(x, y);
    }

    private static string Text(SectionPoint point) =>
        SectionDocumentWriter.Pair(SectionDocument.RoundedMm(point.XMm), SectionDocument.RoundedMm(point.YMm));
}
