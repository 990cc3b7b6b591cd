using SectionScan.Jobs.Demo;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>A job on the sample photographs, ready to be digitised.</summary>
public static class SampleJob
{
    /// <summary>Its name.</summary>
    public const string Name = "Sample: Bramble 480 twin";

    private const string LensName = RunDemo.LensName;

    /// <summary>Begins the job: copies the photos and makes the lens profile.</summary>
    /// <param name="jobs">Where jobs are kept.</param>
    /// <param name="photosFolder">The folder of the sample photographs, as <see cref="DemoPhotos.Find"/> gives it.</param>
    /// <param name="stop">Ends it.</param>
    /// <returns>The new job's id.</returns>
    public static async Task<Result<string>> BeginAsync(JobsFolder jobs, string photosFolder, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(jobs);
        var job = new PortingJob
        {
            Name = Name,
            Head = DemoScenario.Head,
            CheckBarAcrossMm = CheckBars.AcrossMm * DemoScenario.PrintRatio.X,
            CheckBarUpMm = CheckBars.UpMm * DemoScenario.PrintRatio.Y,
        };
        if (!jobs.Begin(job).TryGet(out var id, out var problem) || !jobs.Find(id).TryGet(out var folder, out problem))
        {
            return problem;
        }

        var photos = new List<JobPhoto>();
        foreach (var port in DemoScenario.Ports)
        {
            foreach (var name in port.Photos)
            {
                var content = File.OpenRead(Path.Combine(photosFolder, name));
                await using (content.ConfigureAwait(false))
                {
                    var taken = await PhotoIntake.TakeAsync(folder, content, name, photos.Count + 1, stop).ConfigureAwait(false);
                    if (!taken.TryGet(out var photo, out problem))
                    {
                        return problem;
                    }

                    photos.Add(photo with { Stage = port.Stage, ThicknessMm = port.ThicknessMm });
                }
            }
        }

        var lens = await Task.Run(() => MakeLens(folder, photosFolder), stop).ConfigureAwait(false);
        return lens.Then(file => folder.Write(JobHistory.Of(job with { Photos = photos, PhotosEver = photos.Count, LensFile = file })))
            .Then<string>(_ => id);
    }

    private static Result<string> MakeLens(JobFolder folder, string photosFolder)
    {
        List<string> photos = [.. DemoScenario.LensPhotos.Select(name => Path.Combine(photosFolder, name))];
        return LensFiles.Make(photos, DemoScenario.PrintRatio, folder.PathOf(LensName)).Then<string>(_ => LensName);
    }
}
