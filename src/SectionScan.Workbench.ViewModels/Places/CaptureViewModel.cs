using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.Checking;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Capture: the job's photos, what each shows, and whether it will do.</summary>
public sealed partial class CaptureViewModel(JobViewModel window) : PlaceViewModel(window)
{
    private const double MostThicknessMm = 60;
    private const int LongestStage = 60;

    /// <summary>Words for the stage that are offered; any other will do too.</summary>
    public static IReadOnlyList<string> Stages { get; } = ["exemplar", "as cast", "roughed", "finished", "sawn"];

    /// <summary>The formats that are taken, as a file chooser wants them; told again by the first bytes of what comes.</summary>
    public static string Formats => "image/jpeg,image/png,image/tiff,image/webp,image/bmp,image/heic,image/heif,image/avif,.heic,.heif,.avif,.dng";

    /// <summary>How to hold the camera. Without a lens profile a photo straight down cannot tell the camera's height.</summary>
    public string HowToHold => HoldFor(Window.Job);

    /// <summary>What stands in the way of the last input, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>The photos.</summary>
    public IReadOnlyList<JobPhoto> Photos => Window.Job.Photos;

    /// <summary>What the check found of a photo; null while it is not finished.</summary>
    public CheckOutcome? CheckOf(JobPhoto photo) => Window.Live?.CheckOf(photo);

    /// <summary>Tells what stage of the work a photo shows.</summary>
    public void SetStage(string photoId, string? stage)
    {
        var words = (stage ?? string.Empty).Trim();
        words = words[..Math.Min(words.Length, LongestStage)];
        Change(photoId, "Set the stage of", photo => photo.Stage == words ? photo : photo with { Stage = words });
    }

    /// <summary>How to hold the camera for the photos of a job.</summary>
    public static string HoldFor(PortingJob job)
    {
        ArgumentNullException.ThrowIfNull(job);
        return job.LensFile is null
            ? "Without a lens profile, tilt the camera by 10 to 20 degrees: straight above, its height stays unsure."
            : "Hold the camera straight above.";
    }

    /// <summary>Tells the thickness of a photo's slices, mm, as typed; empty for not known.</summary>
    public void SetThickness(string photoId, string? typed)
    {
        if (!NumberEntry.TryRead(typed, "thickness", out var thicknessMm, out var problem)
            || (thicknessMm is { } mm && !(mm is >= 0 and <= MostThicknessMm)))
        {
            Problem = problem ?? JobProblems.ThicknessUnlikely(MostThicknessMm);
        }
        else
        {
            Problem = null;
            Change(photoId, "Set the thickness in", photo => photo.ThicknessMm == thicknessMm ? photo : photo with { ThicknessMm = thicknessMm });
        }
    }

    /// <inheritdoc/>
    protected override void OnOtherJob() => Problem = null;

    [RelayCommand]
    private void Remove(string photoId) => Window.Live?.Do(
        $"Remove {Window.Job.Photo(photoId)?.GivenName}", job => job.Photo(photoId) is null ? job : job.WithoutPhoto(photoId));

    private void Change(string photoId, string what, Func<JobPhoto, JobPhoto> change)
    {
        Window.Live?.Do($"{what} {Window.Job.Photo(photoId)?.GivenName}", job =>
        {
            if (job.Photo(photoId) is not { } photo)
            {
                return job;
            }

            var next = change(photo);
            return ReferenceEquals(next, photo) ? job : job.With(next);
        });
    }
}
