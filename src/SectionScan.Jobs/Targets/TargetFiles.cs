using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Targets;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Targets;

/// <summary>Writes scale targets to print.</summary>
public static class TargetFiles
{
    /// <summary>Writes one target as PDF and SVG.</summary>
    /// <param name="kind">Which target.</param>
    /// <param name="paper">On what paper.</param>
    /// <param name="folder">Where to; made when it is not there.</param>
    /// <returns>The files' full paths, the PDF first.</returns>
    public static Result<IReadOnlyList<string>> Write(TargetKind kind, PaperSize paper, string folder)
    {
        ArgumentNullException.ThrowIfNull(paper);
        var page = TargetPage.Build(kind, paper);
        var name = TargetPage.FileName(kind, paper);
        return OutputFolder.Open(folder).Then(open =>
            open.Write(name + ".pdf", stream => PdfWriter.Write([page], stream, page.Title)).Then(pdf =>
                open.Write(name + ".svg", stream => SvgWriter.Write(page, stream)).Then<IReadOnlyList<string>>(svg => new[] { pdf, svg })));
    }
}
