using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Summaries;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Proving;

/// <summary>Writes the report of a proof as HTML and PDF, with the pictures that lie beside the finished sections.</summary>
public static class ProofFiles
{
    private const long MostPictureBytes = 50_000_000;

    /// <summary>Writes all or nothing.</summary>
    /// <param name="sections">The proved sections.</param>
    /// <param name="unproved">Why other sections are not proved.</param>
    /// <param name="unit">What lengths are labelled in.</param>
    /// <param name="paper">The PDF's paper.</param>
    /// <param name="footer">Program and version.</param>
    /// <param name="path">The folder.</param>
    public static Result<IReadOnlyList<string>> Write(
        IReadOnlyList<ProvedSection> sections, IReadOnlyList<Problem> unproved, LengthUnit unit, PaperSize paper, string footer, string path)
    {
        ArgumentNullException.ThrowIfNull(sections);
        var pictures = sections.Select(section => PictureOf(section.Finished)).OfType<(string Path, string Photo)>().Distinct().ToList();
        var report = ProofReport.Build(sections, unproved, unit, [.. pictures.Select(picture => (Path.GetFileName(picture.Path), picture.Photo))], footer);
        var files = new List<(string, Action<Stream>)>
        {
            ("proof.html", stream => SummaryWriter.Write(report, stream)),
            ("proof.pdf", stream => PdfWriter.Write(SummaryPaper.Layout(report, paper), stream, report.Title, isCompressed: true)),
        };
        foreach (var (picture, _) in pictures)
        {
            byte[] bytes;
            try
            {
                bytes = File.ReadAllBytes(picture);
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                return FileProblems.CannotRead(picture, e.Message);
            }

            files.Add((Path.GetFileName(picture), stream => stream.Write(bytes)));
        }

        return OutputFolder.Open(path).Then(folder => folder.WriteAll(files));
    }

    /// <summary>The photo with its outlines, as digitising writes it beside the section documents; null when it is not there.</summary>
    private static (string Path, string Photo)? PictureOf(SectionInput section)
    {
        if (section.Path is null || section.Document?.Photo?.File is not { } photo)
        {
            return null;
        }

        var picture = new FileInfo(Path.Combine(
            Path.GetDirectoryName(Path.GetFullPath(section.Path))!, Path.GetFileNameWithoutExtension(Path.GetFileName(photo)) + ".outlines.jpg"));
        return picture.Exists && picture.Length <= MostPictureBytes ? (picture.FullName, Path.GetFileName(photo)) : null;
    }
}
