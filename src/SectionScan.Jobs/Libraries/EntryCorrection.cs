using SectionScan.Archive.Entries;
using SectionScan.Archive.Library;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Libraries;

/// <summary>What is to be corrected in an entry; what is null or empty stays as it is.</summary>
/// <param name="Head">Another head.</param>
/// <param name="Port">Another port.</param>
/// <param name="Station">Another station.</param>
/// <param name="Stage">Another stage; empty for none.</param>
/// <param name="DocumentJson">Another section document.</param>
/// <param name="Note">Another note; empty for none.</param>
/// <param name="NewTags">Tags to add.</param>
/// <param name="DroppedTags">Tags to take away.</param>
/// <param name="NewFields">Numbers to add, or to put in place of those of the same name.</param>
/// <param name="DroppedFields">Names of numbers to take away.</param>
/// <param name="BackTo">A revision whose content comes back first, before the rest is changed.</param>
public sealed record EntryCorrection(
    string? Head,
    PortName? Port,
    int? Station,
    string? Stage,
    string? DocumentJson,
    string? Note,
    IReadOnlyList<string> NewTags,
    IReadOnlyList<string> DroppedTags,
    IReadOnlyList<NumericField> NewFields,
    IReadOnlyList<string> DroppedFields,
    int? BackTo)
{
    /// <summary>Corrects an entry: a new revision with its reason; the earlier ones stay.</summary>
    /// <param name="library">The library.</param>
    /// <param name="id">The entry.</param>
    /// <param name="reason">Why; not empty.</param>
    /// <returns>The entry as it is now; or <c>revision-not-found</c>, <c>tag-not-there</c>, <c>field-not-there</c>,
    /// <c>correction-changes-nothing</c>, or a problem of <see cref="SectionLibrary.Revise"/>.</returns>
    public Result<EntrySummary> Apply(SectionLibrary library, long id, string reason)
    {
        ArgumentNullException.ThrowIfNull(library);
        return library.Show(id).Then(entry => Corrected(entry).Then(content =>
            library.Revise(id, content, reason, entry.Summary.RevisionNumber)));
    }

    /// <summary>What the entry holds when it is corrected.</summary>
    public Result<EntryContent> Corrected(LibraryEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        var path = entry.Summary.Place.Path;
        if (!EntryRevisions.Find(entry, BackTo).TryGet(out var revision, out var problem))
        {
            return problem;
        }

        var from = revision.Content;

        if (DroppedTags.FirstOrDefault(tag => !from.Tags.Any(each => IsSame(each, tag))) is { } noTag)
        {
            return LibraryUseProblems.TagNotThere(path, noTag);
        }

        if (DroppedFields.FirstOrDefault(name => !from.Fields.Any(each => IsSame(each.Name, name))) is { } noField)
        {
            return LibraryUseProblems.FieldNotThere(path, noField);
        }

        var place = from.Place;
        var corrected = new EntryContent(
            new(Head ?? place.Head, Port ?? place.Port, Station ?? place.Station, Stage ?? place.Stage),
            DocumentJson ?? from.DocumentJson,
            Note ?? from.Notes,
            [.. from.Tags.Where(tag => !DroppedTags.Any(each => IsSame(each, tag))), .. NewTags],
            [
                .. from.Fields.Where(field =>
                    !DroppedFields.Any(each => IsSame(each, field.Name)) && !NewFields.Any(each => IsSame(each.Name, field.Name))),
                .. NewFields,
            ]);
        return IsSameContent(corrected, entry.Current.Content) ? LibraryUseProblems.ChangesNothing(path) : corrected;
    }

    private static bool IsSameContent(EntryContent a, EntryContent b) =>
        a.Place == b.Place && a.DocumentJson == b.DocumentJson && a.Notes == b.Notes && a.Tags.SequenceEqual(b.Tags) && a.Fields.SequenceEqual(b.Fields);

    private static bool IsSame(string a, string b) => a.Trim().Equals(b.Trim(), StringComparison.OrdinalIgnoreCase);
}
