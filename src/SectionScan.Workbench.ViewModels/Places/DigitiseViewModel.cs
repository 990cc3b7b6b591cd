using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Imaging.Photos;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Digitise: from photos to sections, and the photo with its outlines.</summary>
public sealed partial class DigitiseViewModel(JobViewModel window) : PlaceViewModel(window)
{
    /// <summary>The photo on show, or null: then the first one.</summary>
    [ObservableProperty]
    public partial string? ChosenPhoto { get; set; }

    /// <summary>The section whose numbers are on show, or null: then the photo's first.</summary>
    [ObservableProperty]
    public partial string? ChosenSection { get; set; }

    /// <summary>The photo on show.</summary>
    public JobPhoto? Photo => (ChosenPhoto is { } id ? Window.Job.Photo(id) : null) ?? (Window.Job.Photos.Count > 0 ? Window.Job.Photos[0] : null);

    /// <summary>Its sections.</summary>
    public IReadOnlyList<JobSection> Sections => Photo is { } photo ? [.. Window.Job.Sections.Where(each => each.PhotoId == photo.Id)] : [];

    /// <summary>The section whose numbers are on show.</summary>
    public JobSection? Section => Sections.FirstOrDefault(each => each.Id == ChosenSection) ?? (Sections.Count > 0 ? Sections[0] : null);

    /// <summary>Photos that are not digitised yet.</summary>
    public IReadOnlyList<string> Waiting => [.. Window.Job.Photos.Where(each => !each.IsDigitised).Select(each => each.Id)];

    /// <summary>The run, whoever started it.</summary>
    public DigitisingRun? Run => Window.Live?.Digitising;

    /// <summary>A section's document and measures, or why they cannot be read.</summary>
    public Result<MeasuredSection>? Measured(JobSection section) => Window.Live?.Measured(section);

    /// <summary>A section's outline in the photo on show, px as displayed.</summary>
    public IReadOnlyList<PixelPoint> Displayed(JobSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return Window.Job.Photo(section.PhotoId) is { } photo && Measured(section)?.TryGet(out var measured, out _) == true
            && measured.Document.Camera is { } camera
            ? Displayed(photo, new(camera.Lens, camera.Pose), measured)
            : [];
    }

    /// <summary>True when thickness, check bars or lens were changed after a photo was digitised.</summary>
    public bool IsOutOfDate(JobPhoto photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return Window.Job.Sections.FirstOrDefault(each => each.PhotoId == photo.Id) is { } section
            && Measured(section)?.TryGet(out var read, out _) == true && JobDigitising.IsOutOfDate(Window.Job, photo, read.Document);
    }

    /// <summary>How many corrections by hand a photo's sections hold, which digitising again leaves behind.</summary>
    public int CorrectionsOf(JobPhoto photo) => Window.Job.Sections.Where(each => each.PhotoId == photo.Id).Sum(each => each.Corrections);

    /// <inheritdoc/>
    protected override void OnOtherJob() => (ChosenPhoto, ChosenSection) = (null, null);

    private static PixelPoint[] Displayed(JobPhoto photo, Camera camera, MeasuredSection measured)
    {
        var view = new PhotoView(photo.WidthPx, photo.HeightPx, photo.QuarterTurns, string.Empty);
        return [.. measured.Document.PlacedOutline.Select(p => view.ToDisplayed(camera.Project(p, measured.Document.Section.ThicknessMm)))];
    }

    [RelayCommand]
    private Task DigitiseWaitingAsync() => Run?.StartAsync(Waiting) ?? Task.CompletedTask;

    [RelayCommand]
    private Task DigitiseAgainAsync(string photoId) => Run?.StartAsync([photoId]) ?? Task.CompletedTask;

    [RelayCommand]
    private void Stop() => Run?.Stop();
}
