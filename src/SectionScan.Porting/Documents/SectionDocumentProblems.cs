using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What can be wrong with a section document.</summary>
public static class SectionDocumentProblems
{
    /// <summary>The text is far longer than any section needs.</summary>
    public static Problem TooLarge(string where, long limitBytes) => new(
        "section-document-too-large",
        string.Create(CultureInfo.InvariantCulture, $"The file is larger than {limitBytes / 1_000_000} MB; a section document is some 100 kB."),
        where,
        "Check that it is a section document and not a photo or a whole archive.");

    /// <summary>The text is not JSON, is cut off, or is nested too deeply.</summary>
    public static Problem NotJson(string where, long line, long column) => new(
        "section-document-not-json",
        string.Create(CultureInfo.InvariantCulture, $"The text breaks off or is not JSON at line {line}, character {column}."),
        where,
        "Copy the document again from where it was made, or digitise the photo again.");

    /// <summary>JSON, but of another kind.</summary>
    public static Problem NotASectionDocument(string where, string? schema) => new(
        "not-a-section-document",
        schema is null ? "It does not name its schema." : $"Its schema is \"{schema}\".",
        where,
        $"Give a section document; its first line of content reads \"schema\": \"{SectionDocument.SchemaName}\".");

    /// <summary>Written by a later version.</summary>
    public static Problem LaterVersion(string where, string schema) => new(
        "section-document-later-version",
        $"Its schema is \"{schema}\"; this program reads up to \"{SectionDocument.SchemaName}\".",
        where,
        "Install the newer SectionScan that wrote it, or ask for the document in the older form.");

    /// <summary>A field that must be there is not.</summary>
    public static Problem FieldMissing(string where, string field) => new(
        "section-document-field-missing",
        $"The field \"{field}\" is missing.",
        where,
        "Copy the document again from where it was made; every field is written, if only as null.");

    /// <summary>A field holds something else than it should.</summary>
    public static Problem FieldUnusable(string where, string field, string expected) => new(
        "section-document-field-unusable",
        $"The field \"{field}\" should be {expected}.",
        where,
        "Undo the last edit of the document, or digitise the photo again.");

    /// <summary>The measures written beside the outline are not those of the outline.</summary>
    public static Problem ContradictsItself(string where, double statedMm2, double outlineMm2) => new(
        "section-document-contradicts-itself",
        string.Create(CultureInfo.InvariantCulture, $"It states an area of {statedMm2:0.###} mm², but its outline encloses {outlineMm2:0.###} mm²."),
        where,
        "Restore the outline, or delete the fields \"measures\" and \"budget\" if the outline is the right one.");
}
