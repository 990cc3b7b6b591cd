using SectionScan.Archive.Entries;

namespace SectionScan.Cli.Commands.Library;

/// <summary>The history of an entry in words.</summary>
internal static class HistoryWords
{
    /// <summary>What a revision did and why.</summary>
    public static string Line(EntryRevision revision) =>
        (revision.Action.ToString().ToLowerInvariant() + (revision.Reason.Length > 0 ? ": " + revision.Reason : string.Empty)).ReplaceLineEndings(" ");

    /// <summary>What a revision changed against the one before it; the first one changes nothing.</summary>
    public static IReadOnlyList<string> Changes(EntryRevision? before, EntryRevision now)
    {
        if (before is null)
        {
            return [];
        }

        var (was, content) = (before.Content, now.Content);
        var changes = new List<string>();
        if (was.Place != content.Place)
        {
            changes.Add($"{was.Place.Path} became {content.Place.Path}");
        }

        if (before.DocumentSha256 != now.DocumentSha256)
        {
            changes.Add("another section document");
        }

        if (was.Notes != content.Notes)
        {
            changes.Add("another note");
        }

        changes.AddRange(content.Tags.Except(was.Tags).Select(tag => $"+ tag {tag}"));
        changes.AddRange(was.Tags.Except(content.Tags).Select(tag => $"- tag {tag}"));
        changes.AddRange(content.Fields.Except(was.Fields).Select(field => $"+ {Field(field)}"));
        changes.AddRange(was.Fields.Except(content.Fields).Select(field => $"- {Field(field)}"));
        return changes;
    }

    private static string Field(NumericField field) => FormattableString.Invariant($"{field.Name} {field.Value} {field.Unit}").TrimEnd();
}
