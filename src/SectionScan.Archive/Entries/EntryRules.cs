using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Entries;

/// <summary>What an entry may hold. Names are kept trimmed and with single spaces, so that a path can be typed.</summary>
internal static class EntryRules
{
    private const int LongestName = 120;
    private const int LongestText = 20_000;
    private const int MostStations = 999;
    private const int MostTags = 100;
    private const int MostFields = 200;

    public static Result<EntryContent> Check(EntryContent content)
    {
        ArgumentNullException.ThrowIfNull(content);
        var place = content.Place;
        if (place.Port.Cylinder is < 1 or > PortName.MostCylinders)
        {
            return Number("cylinder", place.Port.Cylinder, 1, PortName.MostCylinders);
        }

        if (place.Station is < 0 or > MostStations)
        {
            return Number("station", place.Station, 0, MostStations);
        }

        if (content.Tags.Count > MostTags || content.Fields.Count > MostFields)
        {
            return EntryProblems.TextUnusable(place.Path, Invariant($"An entry holds at most {MostTags} tags and {MostFields} numbers."));
        }

        var names = new List<(string Subject, string Text, bool MayBeEmpty)>
        {
            ("head", place.Head, false), ("port mark", place.Port.Mark, true), ("stage", place.Stage, true),
        };
        names.AddRange(content.Tags.Select(tag => ("tag", tag, false)));
        names.AddRange(content.Fields.Select(field => ("field", field.Name, false)));
        names.AddRange(content.Fields.Select(field => ("unit", field.Unit, true)));
        foreach (var (subject, text, mayBeEmpty) in names)
        {
            if (NameProblem(subject, text, mayBeEmpty) is { } problem)
            {
                return problem;
            }
        }

        if (content.Fields.FirstOrDefault(field => !double.IsFinite(field.Value)) is { } odd)
        {
            return EntryProblems.NumberUnusable(odd.Name, "It is not a finite number.");
        }

        if (Twice(content.Fields.Select(field => Name(field.Name))) is { } twice)
        {
            return EntryProblems.TextUnusable(twice, "The field is given twice.");
        }

        return TextProblem("notes", content.Notes) is { } unusable ? unusable : Tidy(content);
    }

    public static Problem? TextProblem(string subject, string text) =>
        text.Length > LongestText ? EntryProblems.TextUnusable(subject, Invariant($"It is {text.Length} characters long; the limit is {LongestText}."))
        : text.Any(c => c is '\0' || (char.IsControl(c) && c is not ('\n' or '\r' or '\t'))) || HasHalfCharacter(text)
            ? EntryProblems.TextUnusable(subject, "It holds characters that cannot be shown.")
        : null;

    public static string Name(string text) => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));

    private static EntryContent Tidy(EntryContent content)
    {
        var place = content.Place;
        return content with
        {
            Place = new(Name(place.Head), place.Port with { Mark = Name(place.Port.Mark) }, place.Station, Name(place.Stage)),
            Notes = content.Notes.ReplaceLineEndings("\n").Trim(),
            Tags = [.. content.Tags.Select(Name).Distinct(StringComparer.OrdinalIgnoreCase)],
            Fields = [.. content.Fields.Select(field => new NumericField(Name(field.Name), field.Value + 0.0, Name(field.Unit)))],
        };
    }

    private static Problem? NameProblem(string subject, string text, bool mayBeEmpty)
    {
        var name = Name(text);
        return name.Length == 0 && !mayBeEmpty ? EntryProblems.TextUnusable(subject, $"The {subject} has no name.")
            : name.Length > LongestName ? EntryProblems.TextUnusable(subject, Invariant($"The {subject} is {name.Length} characters long; the limit is {LongestName}."))
            : subject != "unit" && subject != "field" && subject != "tag" && name.Contains('/', StringComparison.Ordinal)
                ? EntryProblems.TextUnusable(subject, $"The {subject} \"{name}\" holds a slash, which parts the names in a path.")
            : TextProblem(subject, name);
    }

    private static string? Twice(IEnumerable<string> names) =>
        names.GroupBy(name => name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(group => group.Count() > 1)?.Key;

    private static bool HasHalfCharacter(string text)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsSurrogate(text[i]))
            {
                if (i + 1 == text.Length || !char.IsSurrogatePair(text[i], text[i + 1]))
                {
                    return true;
                }

                i++;
            }
        }

        return false;
    }

    private static Problem Number(string subject, int value, int least, int most) =>
        EntryProblems.NumberUnusable(subject, Invariant($"{value} is not within {least} to {most}."));

    private static string Invariant(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
