using System.Globalization;
using System.Text.RegularExpressions;
using SectionScan.Archive.Entries;
using SectionScan.Drawings.Outlines;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Libraries;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Comparing;

/// <summary>A section named by a person: a section document, an outline as DXF, SVG or CSV, or an entry of the library.</summary>
/// <param name="Name">What to call it in drawings and tables.</param>
/// <param name="Outline">Its outline.</param>
/// <param name="ErrorSources">What is known of its error; empty for a bare outline.</param>
public sealed partial record SectionInput(string Name, Outline Outline, IReadOnlyList<OutlineErrorSource> ErrorSources)
{
    /// <summary>The whole document; null for a bare outline.</summary>
    public SectionDocument? Document { get; init; }

    /// <summary>The file that it was read from; null for an entry of the library.</summary>
    public string? Path { get; init; }

    /// <summary>SHA-256 of the text that it was read from, lower-case hexadecimal.</summary>
    public string Sha256 { get; init; } = string.Empty;

    /// <summary>True for a target shape, which has no error: it is what it is.</summary>
    public bool IsExact => Document?.Section.Subject == SectionSubject.Target;

    /// <summary>True when the error of the outline is known, if only to be none.</summary>
    public bool IsErrorKnown => IsExact || ErrorSources.Count > 0;

    /// <summary>What to call it in a report: "station 4", or its name.</summary>
    public string Title => Station is { } station ? FormattableString.Invariant($"station {station}") : Name;

    /// <summary>The station's number, or null.</summary>
    public int? Station => Document?.Section.Station;

    /// <summary>What was marked in the section.</summary>
    public SectionMarks Marks => Document?.Marks ?? SectionMarks.None;

    /// <summary>The number of the entry it came from, or null.</summary>
    public long? EntryId { get; init; }

    /// <summary>What an entry of the library is named with.</summary>
    public const string LibraryPrefix = "library:";

    private const string DocumentEnding = ".json";

    /// <summary>Reads a section.</summary>
    /// <param name="text">A file, or <c>library:</c> and an entry's number or path; behind a number, @ and a revision's number may follow.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    public static Result<SectionInput> Read(string text, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (text.StartsWith(LibraryPrefix, StringComparison.OrdinalIgnoreCase))
        {
            var entry = text[LibraryPrefix.Length..];
            var (name, revision) = EntryAtRevision().Match(entry) is { Success: true } named
                ? (named.Groups[1].Value, int.Parse(named.Groups[2].ValueSpan, CultureInfo.InvariantCulture)) : (entry, (int?)null);
            return LibrarySource.UseExisting(libraryPath, time, library => library.Find(name).Then(library.Show)).Then(found => From(found, revision));
        }

        if (Directory.Exists(text))
        {
            return ComparingProblems.FolderForSection(text);
        }

        if (OutlineFile.IsKnown(text))
        {
            return TextFile.Read(text, OutlineFile.MaximumBytes).Then(content => OutlineFile.Read(content, text, new()).TryGet(out var chosen, out var problem)
                ? new SectionInput(System.IO.Path.GetFileNameWithoutExtension(text), chosen.Outline, []) { Sha256 = TextFile.Sha256Of(content) }
                : (Result<SectionInput>)ComparingProblems.ImportFirst(problem));
        }

        return File.Exists(text) && FileNames.IsPhoto(text) ? ComparingProblems.PhotoForSection(text)
            : File.Exists(text) && !text.EndsWith(DocumentEnding, StringComparison.OrdinalIgnoreCase) ? ComparingProblems.NoKindOfSection(text)
            : TextFile.Read(text, SectionDocumentFormat.MaximumBytes).Then(content =>
                SectionDocumentFormat.Read(content, text).Then<SectionInput>(document => Of(FileNames.StemOf(text), document) with { Sha256 = TextFile.Sha256Of(content) }))
                .Then<SectionInput>(section => section with { Path = text });
    }

    /// <summary>The section that an entry of the library holds now.</summary>
    public static Result<SectionInput> From(LibraryEntry entry) => From(entry, null);

    /// <summary>The section of a document at hand.</summary>
    /// <param name="name">What to call it.</param>
    /// <param name="document">The document.</param>
    public static SectionInput Of(string name, SectionDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return new(name, document.Section.Outline, document.Section.ErrorSources) { Document = document };
    }

    /// <summary>Lays another section on this one.</summary>
    /// <param name="other">The other section.</param>
    /// <param name="choice">How.</param>
    /// <returns>The other's outline as laid; or a problem of <see cref="SectionAlignment.Align"/> with both names.</returns>
    public Result<AlignedOutline> LaidOnMe(SectionInput other, AlignmentChoice choice)
    {
        ArgumentNullException.ThrowIfNull(other);
        return SectionAlignment.Align((Outline, Marks), (other.Outline, other.Marks), choice).TryGet(out var laid, out var problem)
            ? laid
            : problem with { Where = $"{Name}, {other.Name} ({problem.Where})" };
    }

    /// <summary>u of a deviation between this wall and another's, both walls' u added in squares, mm; NaN when the error of either is not known.</summary>
    public double WallStandardUncertaintyWithMm(SectionInput other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return IsErrorKnown && other.IsErrorKnown
            ? double.Hypot(WallUncertainty.Of(Outline, ErrorSources), WallUncertainty.Of(other.Outline, other.ErrorSources))
            : double.NaN;
    }

    /// <summary>The section as an entry's revision had it; without a number, as it is now.</summary>
    private static Result<SectionInput> From(LibraryEntry entry, int? number)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var path = entry.Summary.Place.Path;
        return EntryRevisions.Find(entry, number).Then(revision => entry.ReadDocument(revision).Then<SectionInput>(document =>
            Of(number is null ? path : FormattableString.Invariant($"{path}, revision {number}"), document) with { EntryId = entry.Summary.Id, Sha256 = revision.DocumentSha256 }));
    }

    [GeneratedRegex("^(#?[0-9]{1,18})@([0-9]{1,9})$")]
    private static partial Regex EntryAtRevision();
}
