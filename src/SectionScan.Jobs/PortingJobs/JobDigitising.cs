using System.Globalization;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>Checks and digitises a job's photos, as the commands do.</summary>
public static class JobDigitising
{
    private const string ResultsName = "digitised";
    private const string ThicknessName = "thickness";
    private const string LensName = "lens";
    private const string SeedsName = "seeds";
    private const string PrintRatioName = "print-ratio";

    private static readonly string[] SettingNames = [ThicknessName, LensName, PrintRatioName, "points", "rectangle", "size", SeedsName];

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

        return new DigitiseSettings
        {
            ThicknessMm = photo.ThicknessMm,
            Lens = lens,
            PrintRatio = photo.Scale is null ? job.PrintRatio() : null,
            Scale = photo.Scale?.ToSource(),
            Seeds = photo.Seeds,
        };
    }

    /// <summary>Digitises one photo into files of its own run.</summary>
    /// <param name="folder">The job's folder.</param>
    /// <param name="job">The job.</param>
    /// <param name="photo">The photo.</param>
    /// <param name="program">Name and version of the program, for the documents.</param>
    /// <param name="stop">Ends it.</param>
    /// <returns>What became of it; a photo that gives nothing has its problem inside.</returns>
    public static Result<PhotoRun> Run(JobFolder folder, PortingJob job, JobPhoto photo, string program, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return Settings(folder, job, photo).Then(settings => OutputFolder.Open(folder.PathOf(ResultsName)).Then(results =>
        {
            // Told by the folders that are there, not by the job: a run that was taken back keeps its own, and its documents their names.
            var name = Path.Combine(ResultsName, UnusedName.Next(results.FullPath, photo.Id + "-run-"));
            return DigitisePhotos.Run(
                new([folder.PathOf(photo)], settings, InWords(job, photo), program, folder.PathOf(name), IsInch: false), null, stop)
                .Then<PhotoRun>(outcomes => new PhotoRun(outcomes[0], name));
        }));
    }

    /// <summary>True when thickness, check bars, lens, scale or the slices pointed to are no longer those that a photo was digitised with.</summary>
    public static bool IsOutOfDate(PortingJob job, JobPhoto photo, SectionDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(photo);
        ArgumentNullException.ThrowIfNull(job);
        var now = InWords(job, photo);
        return SettingNames.Any(name => now.GetValueOrDefault(name) != document.Settings.GetValueOrDefault(name));
    }

    /// <summary>The job with what came of a photo in place of what came of it before. A station that is found again keeps its section's
    /// id, so that what was chosen stays chosen; no id comes to mean another slice.</summary>
    public static PortingJob With(PortingJob job, string photoId, PhotoRun run)
    {
        ArgumentNullException.ThrowIfNull(job);
        ArgumentNullException.ThrowIfNull(run);
        if (job.Photo(photoId) is not { } photo)
        {
            return job;
        }

        var outcome = run.Outcome;
        var done = photo with
        {
            Runs = photo.Runs + 1,
            Problem = outcome.Problem is { } problem ? problem with { Where = photo.GivenName } : null,
            Warnings = outcome.Digitised is { } digitised
                ? [.. digitised.Warnings, .. digitised.Refused.Select(refused => refused.InWords())]
                : [],
        };
        var before = job.Sections.Where(each => each.PhotoId == photoId).ToList();
        var last = before.Select(each => NumberOf(each, photoId)).DefaultIfEmpty(0).Max();
        var sections = outcome.Documents.Select(each =>
        {
            var station = each.Document.Section.Station;
            var isOnlyOne = station is not null && outcome.Documents.Count(other => other.Document.Section.Station == station) == 1;
            var same = isOnlyOne ? before.Where(old => old.Station == station).ToList() : [];
            var id = same.Count == 1 ? same[0].Id : string.Create(CultureInfo.InvariantCulture, $"{photoId}-{++last}");
            return new JobSection(id, photoId, Path.Combine(run.Folder, each.FileName), station);
        }).ToList();
        var others = job.Sections.Where(each => each.PhotoId != photoId).Concat(sections).ToList();
        return job.With(done) with
        {
            Sections = [.. job.Photos.SelectMany(each => others.Where(section => section.PhotoId == each.Id))],
        };
    }

    private static int NumberOf(JobSection section, string photoId) =>
        int.TryParse(section.Id.AsSpan(Math.Min(section.Id.Length, photoId.Length + 1)), NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number : 0;

    private static SortedDictionary<string, string> InWords(PortingJob job, JobPhoto photo)
    {
        var words = new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (photo.ThicknessMm is { } thickness)
        {
            words[ThicknessName] = thickness.ToString(CultureInfo.InvariantCulture);
        }

        if (job.LensFile is { } lens)
        {
            words[LensName] = lens;
        }

        if (photo.Scale is null && job.PrintRatio() is { } ratio)
        {
            words[PrintRatioName] = string.Create(CultureInfo.InvariantCulture, $"{ratio.X:0.#####},{ratio.Y:0.#####}");
        }

        if (photo.Seeds.Count > 0)
        {
            words[SeedsName] = string.Join(' ', photo.Seeds.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.X:0.##},{p.Y:0.##}")));
        }

        foreach (var (name, value) in photo.Scale?.InWords() ?? [])
        {
            words[name] = value;
        }

        return words;
    }
}
