using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Digitising;

/// <summary>The text of a section document with its measures.</summary>
public static class SectionText
{
    /// <summary>Writes it. An outline of which no error is known has no measures in its document: u = 0 would be a promise. A target shape is
    /// exact and has them.</summary>
    /// <param name="document">The section.</param>
    /// <param name="measured">Its measures.</param>
    public static string Of(SectionDocument document, MeasuredOutline measured)
    {
        ArgumentNullException.ThrowIfNull(document);
        var isKnown = document.Section.ErrorSources.Count > 0 || document.Section.Subject == SectionSubject.Target;
        return SectionDocumentFormat.Write(document, isKnown ? MeasureUnits.ForDocument(measured) : []);
    }

    /// <summary>The same, measured here.</summary>
    public static string Of(SectionDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        return Of(document, MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources));
    }
}
