using System.Globalization;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Keeps corrected section documents: each under a name of its own, so that the one before is still there to go back to.</summary>
public static class JobCorrections
{
    private const string FolderName = "corrected";
    private const int MostOfASection = 100_000;

    /// <summary>Writes a corrected document.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="section">The section as it was.</param>
    /// <param name="corrected">Its document from now on.</param>
    /// <returns>The section as it is.</returns>
    public static Result<JobSection> Keep(JobFolder folder, JobSection section, SectionDocument corrected)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(section);
        ArgumentNullException.ThrowIfNull(corrected);
        var measured = MeasuredOutline.Of(corrected.Section.Outline, corrected.Section.ErrorSources);
        var text = SectionDocumentFormat.Write(corrected, MeasureUnits.ForDocument(measured));
        return OutputFolder.Open(folder.PathOf(FolderName)).Then(open =>
        {
            var name = Enumerable.Range(1, MostOfASection)
                .Select(n => string.Create(CultureInfo.InvariantCulture, $"{section.Id}-{n}.section.json"))
                .First(each => !File.Exists(Path.Combine(open.FullPath, each)));
            return open.Write(name, text).Then<JobSection>(_ => section with
            {
                DocumentFile = Path.Combine(FolderName, name),
                Station = corrected.Section.Station,
                Corrections = corrected.Corrections.Count,
            });
        });
    }
}
