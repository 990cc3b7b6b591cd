using System.Globalization;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Checks and digitises a job's photos, as the commands do.</summary>
public static class JobDigitising
{
    private const string ResultsName = "digitised";

    /// <summary>How a photo of the job is checked and digitised.</summary>
    public static Result<DigitiseSettings> Settings(JobFolder folder, PortingJob job, JobPhoto photo)
    {
        ArgumentNullException.ThrowIfNull(folder);
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(photo);
        LensProfile? lens = null;
        if (job.LensFile is not null && !LensFiles.Read(folder.PathOf(job.LensFile)).TryGet(out lens, out var problem))
        {
            return problem;
        }

        return new DigitiseSettings { ThicknessMm = photo.ThicknessMm, Lens = lens, PrintRatio = job.PrintRatio() };
    }

    /// <summary>Digitises one photo into files of its own run.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job.</param>
    /// <param name="photo">The photo.</param>
    /// <param name="program">Name and version of the program, for the documents.</param>
    /// <param name="stop">Ends it.</param>
    /// <returns>What became of it; a photo that gives nothing has its problem inside.</returns>
    public static Result<PhotoOutcome> Run(JobFolder folder, PortingJob job, JobPhoto photo, string program, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return Settings(folder, job, photo).Then(settings => DigitisePhotos.Run(
            new([folder.PathOf(photo)], settings, InWords(job, photo), program, folder.PathOf(RunFolder(photo, photo.Runs + 1)), IsInch: false),
            null, stop)).Then<PhotoOutcome>(outcomes => outcomes[0]);
    }

    /// <summary>The job with what came of a photo in place of what came of it before.</summary>
    public static PortingJob With(PortingJob job, string photoId, PhotoOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(outcome);
        if (job.Photo(photoId) is not { } photo)
        {
            return job;
        }

        var run = photo.Runs + 1;
        var done = photo with
        {
            Runs = run,
            Problem = outcome.Problem is { } problem ? problem with { Where = photo.GivenName } : null,
            Warnings = outcome.Digitised is { } digitised
                ? [.. digitised.Warnings, .. digitised.Refused.Select(refused => $"{refused.What} {refused.Remedy}")]
                : [],
        };
        var sections = outcome.Documents.Select((each, i) => new JobSection(
            string.Create(CultureInfo.InvariantCulture, $"{photoId}-{i + 1}"), photoId,
            Path.Combine(RunFolder(photo, run), each.FileName), each.Document.Section.Station));
        var others = job.Sections.Where(each => each.PhotoId != photoId).Concat(sections).ToList();
        return job.With(done) with
        {
            Sections = [.. job.Photos.SelectMany(each => others.Where(section => section.PhotoId == each.Id))],
        };
    }

    private static string RunFolder(JobPhoto photo, int run) =>
        Path.Combine(ResultsName, string.Create(CultureInfo.InvariantCulture, $"{photo.Id}-run-{run}"));

    private static SortedDictionary<string, string> InWords(PortingJob job, JobPhoto photo)
    {
        var words = new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (photo.ThicknessMm is { } thickness)
        {
            words["thickness"] = thickness.ToString(CultureInfo.InvariantCulture);
        }

        if (job.LensFile is { } lens)
        {
            words["lens"] = lens;
        }

        if (job.PrintRatio() is { } ratio)
        {
            words["print-ratio"] = string.Create(CultureInfo.InvariantCulture, $"{ratio.X:0.#####},{ratio.Y:0.#####}");
        }

        return words;
    }
}
