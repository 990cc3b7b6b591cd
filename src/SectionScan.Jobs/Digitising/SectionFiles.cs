using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Digitising;

/// <summary>The files that one section is handed out as.</summary>
public static class SectionFiles
{
    /// <summary>The endings there are: document, drawings at true size, points.</summary>
    public static IReadOnlyList<string> Endings { get; } = [".section.json", ".svg", ".pdf", ".csv"];

    /// <summary>Writes one of them.</summary>
    /// <param name="ending">One of <see cref="Endings"/>.</param>
    /// <param name="document">The section.</param>
    /// <param name="measured">Its measures.</param>
    /// <param name="isInch">True when the drawing is to be labelled in inches.</param>
    /// <param name="stream">Where to; stays open.</param>
    /// <exception cref="ArgumentException">There is no such ending.</exception>
    public static void Write(string ending, SectionDocument document, MeasuredOutline measured, bool isInch, Stream stream)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(stream);
        var outline = document.Section.Outline;
        switch (ending)
        {
            case ".section.json":
                stream.Write(Encoding.UTF8.GetBytes(SectionText.Of(document, measured)));
                break;
            case ".svg":
                SvgWriter.Write(SectionDrawing.Build(outline, Caption(document, measured, isInch)), stream);
                break;
            case ".pdf":
                var page = SectionDrawing.Build(outline, Caption(document, measured, isInch));
                PdfWriter.Write([page], stream, page.Title);
                break;
            case ".csv":
                OutlineCsv.Write(outline, stream);
                break;
            default:
                throw new ArgumentException($"No section is written as {ending}.", nameof(ending));
        }
    }

    /// <summary>What stands beside the drawing of a section.</summary>
    internal static SectionCaption Caption(SectionDocument document, MeasuredOutline measured, bool isInch)
    {
        var section = document.Section;
        var title = section.Station is { } station ? FormattableString.Invariant($"Station {station}")
            : section.Subject == SectionSubject.Opening ? "Opening" : "Section";
        return new(title, measured[MeasureCatalogue.Width].Estimate, measured[MeasureCatalogue.Height].Estimate)
        {
            AreaMm2 = measured[MeasureCatalogue.Area].Estimate,
            Notes = [.. Notes(document)],
            Unit = isInch ? LengthUnit.Inch : LengthUnit.Millimetre,
        };
    }

    private static IEnumerable<string> Notes(SectionDocument document)
    {
        if (document.Photo is { } photo)
        {
            yield return photo.File;
        }

        if (document.Settings.TryGetValue("shrinkage", out var percent))
        {
            yield return $"enlarged for {percent} % of shrinkage";
        }
    }
}
