using System.Globalization;
using SectionScan.Drawings.Outlines;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Outlines;

/// <summary>Makes a section document of an outline that another program drew.</summary>
/// <param name="Choice">Which line of the drawing is the outline, and its unit.</param>
/// <param name="Station">The station, or null.</param>
/// <param name="Subject">What was drawn.</param>
/// <param name="ThicknessMm">Thickness of the slice, mm; zero for an opening or when it is of no account.</param>
/// <param name="EdgeUncertaintyMm">The standard uncertainty of the drawn edge, mm, as the person states it; null when it is not known.</param>
/// <param name="Turn">How far to turn it counter-clockwise, so that the roof is up.</param>
/// <param name="IsMirrored">True: drawn looking upstream; mirrored left for right before it is turned.</param>
/// <param name="KeepsOrigin">True: the drawing's origin stays; else the origin goes to the centroid, as sections have it.</param>
/// <param name="Program">Name and version of the program.</param>
public sealed record OutlineImport(
    OutlineChoice Choice,
    int? Station,
    SectionSubject Subject,
    double ThicknessMm,
    double? EdgeUncertaintyMm,
    Angle Turn,
    bool IsMirrored,
    bool KeepsOrigin,
    string Program)
{
    /// <summary>A drawing taken as it is, with the unit that it states.</summary>
    /// <param name="program">Name and version of the program.</param>
    public static OutlineImport AsDrawn(string program) => new(new(), null, SectionSubject.Opening, 0, null, Angle.FromDegrees(0), false, false, program);

    /// <summary>Reads a drawing.</summary>
    /// <returns>The section; or a problem of the file, of the drawing or of the outline.</returns>
    public Result<ImportedSection> Read(string path) =>
        TextFile.Read(path, OutlineFile.MaximumBytes).Then(text => OutlineFile.Read(text, path, Choice).Then(chosen =>
            TextFile.Sha256(path).Then(hash => Document(path, hash, chosen))));

    private Result<ImportedSection> Document(string path, string sha256, ChosenOutline chosen)
    {
        var outline = (IsMirrored ? chosen.Outline.Mirrored() : chosen.Outline).Turned(Turn);
        if (!KeepsOrigin)
        {
            var centroid = PolygonMoments.Of(outline.Points).Centroid;
            outline = outline.Moved(-centroid.XMm, -centroid.YMm);
        }

        IReadOnlyList<OutlineErrorSource> sources = EdgeUncertaintyMm is { } u ? [new("drawn edge", [new NormalOffsetEffect(u)], true)] : [];
        var warnings = new List<string>();
        if (sources.Count == 0)
        {
            warnings.Add("The outline was read from a drawing; nothing is known of its uncertainty.");
        }

        if (chosen.LinesLeftOpen > 0)
        {
            warnings.Add(string.Create(CultureInfo.InvariantCulture, $"{chosen.LinesLeftOpen} lines of the drawing are not closed and were left out."));
        }

        var section = new Section(Station, Subject, ThicknessMm, outline, sources, warnings);
        return new SectionDocument(section, null, [], null, null, null, Settings(path, sha256, chosen), Program).Rounded(path).Then<ImportedSection>(document =>
            new ImportedSection(document, MeasuredOutline.Of(document.Section.Outline, sources)));
    }

    private SortedDictionary<string, string> Settings(string path, string sha256, ChosenOutline chosen)
    {
        var settings = new SortedDictionary<string, string>(StringComparer.Ordinal)
        {
            ["drawing"] = Path.GetFileName(path),
            ["drawing-sha256"] = sha256,
            ["mm-per-unit"] = chosen.MmPerUnit.ToString("R", CultureInfo.InvariantCulture),
        };
        if (chosen.Layer.Length > 0)
        {
            settings["layer"] = chosen.Layer;
        }

        if (Turn.Degrees != 0)
        {
            settings["turn"] = Turn.Degrees.ToString("R", CultureInfo.InvariantCulture);
        }

        if (IsMirrored)
        {
            settings["mirror"] = "true";
        }

        return settings;
    }
}

/// <summary>A section read from a drawing.</summary>
/// <param name="Document">The document, rounded as it is written.</param>
/// <param name="Measured">Its measures; their uncertainties hold only what the person stated.</param>
public sealed record ImportedSection(SectionDocument Document, MeasuredOutline Measured)
{
    /// <summary>The document's text. Measures stand in it only when something is known of their uncertainty.</summary>
    public string ToJson() => SectionText.Of(Document, Measured);
}
