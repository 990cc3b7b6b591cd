using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.Checking;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Results;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Capture: the job's photos, what each shows, and whether it will do.</summary>
public sealed partial class CaptureViewModel(JobViewModel window) : PlaceViewModel(window)
{
    private const double MostThicknessMm = 60;
    private const int LongestStage = 60;

    /// <summary>Words for the stage that are offered; any other will do too.</summary>
    public static IReadOnlyList<string> Stages { get; } = ["exemplar", "as cast", "roughed", "finished", "sawn"];

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

    /// <summary>Tells the thickness of a photo's slices, mm.</summary>
    public void SetThickness(string photoId, double? thicknessMm)
    {
        Problem = thicknessMm is { } mm && !(mm is >= 0 and <= MostThicknessMm) ? JobProblems.ThicknessUnlikely(MostThicknessMm) : null;
        if (Problem is null)
        {
            Change(photoId, "Set the thickness in", photo => photo.ThicknessMm == thicknessMm ? photo : photo with { ThicknessMm = thicknessMm });
            Window.Live?.BeginChecks();
        }
    }

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
