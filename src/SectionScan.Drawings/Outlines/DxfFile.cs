using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>The header variables and the entities of a DXF file in its text form.</summary>
/// <remarks>Written after the published DXF Reference: groups of two lines, a code and a value; sections HEADER and ENTITIES.</remarks>
internal sealed record DxfFile(int? UnitCode, IReadOnlyList<DxfEntity> Entities)
{
    public static Result<DxfFile> Read(string text, string where)
    {
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            return OutlineFileProblems.Broken(where, "The file is not a DXF file in text form.");
        }

        var groups = new List<DxfGroup>();
        using var reader = new StringReader(text);
        for (var line = 1; reader.ReadLine() is { } code; line += 2)
        {
            if (reader.ReadLine() is not { } value)
            {
                if (string.IsNullOrWhiteSpace(code))
                {
                    break;
                }

                return OutlineFileProblems.BrokenLine(where, line, "the file breaks off in the middle of a group.");
            }

            var group = new DxfGroup(0, code.Trim(), line);
            if (group.Whole is not { } number)
            {
                return line == 1
                    ? OutlineFileProblems.Broken(where, "The file is not a DXF file: it does not begin with a group code.")
                    : OutlineFileProblems.BrokenLine(where, line, $"a group code should stand here and not \"{Short(code)}\".");
            }

            groups.Add(new(number, value.Trim(), line));
        }

        return Sections(groups, where);
    }

    private static Result<DxfFile> Sections(List<DxfGroup> groups, string where)
    {
        if (!groups.Any(group => group is { Code: 0, Value: "EOF" }))
        {
            return OutlineFileProblems.Broken(where, "The file breaks off before its end mark (EOF).");
        }

        int? unit = null;
        var entities = new List<DxfEntity>();
        string section = string.Empty;
        for (var i = 0; i < groups.Count; i++)
        {
            var group = groups[i];
            switch (group)
            {
                case { Code: 0, Value: "EOF" }:
                    i = groups.Count;
                    break;
                case { Code: 0, Value: "SECTION" }:
                    section = i + 1 < groups.Count && groups[i + 1].Code == 2 ? groups[i + 1].Value : string.Empty;
                    break;
                case { Code: 0, Value: "ENDSEC" }:
                    section = string.Empty;
                    break;
                case { Code: 0 } when section == "ENTITIES":
                    Begin(entities, group);
                    break;
                case { Code: 9, Value: "$INSUNITS" } when section == "HEADER" && i + 1 < groups.Count && groups[i + 1].Code == 70:
                    unit = groups[i + 1].Whole;
                    break;
                default:
                    if (section == "ENTITIES" && entities.Count > 0)
                    {
                        (entities[^1].Vertices.Count > 0 ? entities[^1].Vertices[^1] : entities[^1]).Groups.Add(group);
                    }

                    break;
            }
        }

        return new DxfFile(unit, entities);
    }

    private static void Begin(List<DxfEntity> entities, DxfGroup group)
    {
        if (group.Value == "VERTEX" && entities.Count > 0 && entities[^1].Kind == "POLYLINE")
        {
            entities[^1].Vertices.Add(new(group.Value, group.Line));
        }
        else
        {
            entities.Add(new(group.Value, group.Line));
        }
    }

    private static string Short(string text) => text.Trim() is { Length: > 40 } trimmed ? trimmed[..40] + "…" : text.Trim();
}
