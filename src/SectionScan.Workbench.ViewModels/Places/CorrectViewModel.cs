using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Imaging.Photos;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Corrections;
using SectionScan.Porting.Documents;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>Corrections by hand to the section on show: with a tool in hand, places are picked on the photo.</summary>
public sealed partial class CorrectViewModel(JobViewModel window, DigitiseViewModel digitise) : PlaceViewModel(window)
{
    // A place picked on the photo is good to two pixels, rectangular (common practice, no source).
    private const double HandPx = 2;

    private const double ReachMm = 4;
    private const int HighestStation = 999;
    private const double LargestTurnDeg = 180;

    private readonly List<PixelPoint> picked = [];

    /// <summary>The tool in hand.</summary>
    [ObservableProperty]
    public partial CorrectionTool Tool { get; private set; }

    /// <summary>Why the last correction was not made, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>The places picked so far, px as displayed.</summary>
    public IReadOnlyList<PixelPoint> Picked => picked;

    /// <summary>What to do next, in words.</summary>
    public string Instruction => (Tool, picked.Count) switch
    {
        (CorrectionTool.MovePoint, 0) => "Click the place on the outline that lies wrong.",
        (CorrectionTool.MovePoint, _) => "Now click where the edge really is.",
        (CorrectionTool.RedrawStretch, 0) => "Click on the outline where the stretch begins.",
        (CorrectionTool.RedrawStretch, 1) => "Click along the true edge, and last on the outline where the stretch ends.",
        (CorrectionTool.RedrawStretch, _) => "Click on along the edge, or finish.",
        (CorrectionTool.ExcludeBubble, 0) => "Click the middle of the bubble or burr.",
        (CorrectionTool.ExcludeBubble, _) => "Now click where it ends on the outline.",
        _ => string.Empty,
    };

    /// <summary>True when the stretch can be finished.</summary>
    public bool CanFinish => Tool == CorrectionTool.RedrawStretch && picked.Count >= 2;

    /// <summary>A place picked on the photo on show, px as displayed.</summary>
    public void Pick(double xPx, double yPx)
    {
        if (Tool == CorrectionTool.None || digitise.Section is null || !double.IsFinite(xPx) || !double.IsFinite(yPx))
        {
            return;
        }

        picked.Add(new(xPx, yPx));
        if (Tool is CorrectionTool.MovePoint or CorrectionTool.ExcludeBubble && picked.Count == 2)
        {
            Finish();
        }

        OnPropertyChanged(string.Empty);
    }

    /// <summary>Tells the station of the section on show; null for none.</summary>
    public void SetStation(int? station)
    {
        if (station is < 0 or > HighestStation)
        {
            Problem = new("station-unlikely", "A station is a whole number from 0 to 999.", "station", "Count stations with the flow, from the entry.");
            return;
        }

        Correct("Set the station", (document, _) => HandCorrecting.SetStation(document, station));
    }

    /// <summary>Turns the up of the section on show, degrees counter-clockwise as seen on the photo.</summary>
    public void TurnUp(double degrees)
    {
        if (double.IsFinite(degrees) && Math.Abs(degrees) <= LargestTurnDeg)
        {
            Correct("Turn up", (document, _) => HandCorrecting.TurnUp(document, Angle.FromDegrees(degrees)));
        }
    }

    [RelayCommand]
    private void Take(CorrectionTool tool)
    {
        picked.Clear();
        Problem = null;
        Tool = Tool == tool ? CorrectionTool.None : tool;
        OnPropertyChanged(string.Empty);
    }

    [RelayCommand]
    private void Finish()
    {
        List<PixelPoint> places = [.. picked];
        picked.Clear();
        if (places.Count < 2)
        {
            Problem = CorrectionProblems.TooFewPlaces(2);
            return;
        }

        switch (Tool)
        {
            case CorrectionTool.MovePoint:
                Correct("Move a point", (document, at) => HandCorrecting.MovePoint(document, at.Section(places[0]), at.Section(places[1]), ReachMm, at.HandMm));
                break;
            case CorrectionTool.RedrawStretch:
                Correct("Redraw a stretch", (document, at) => HandCorrecting.RedrawStretch(document, [.. places.Select(at.Section)], at.HandMm));
                break;
            case CorrectionTool.ExcludeBubble:
                Correct("Leave out a bubble", (document, at) =>
                {
                    var middle = at.Section(places[0]);
                    return HandCorrecting.ExcludeBubble(document, middle, Math.Max(at.HandMm, middle.DistanceTo(at.Section(places[1]))), at.HandMm);
                });
                break;
            default:
                break;
        }

        OnPropertyChanged(string.Empty);
    }

    [RelayCommand]
    private void Forget()
    {
        picked.Clear();
        Tool = CorrectionTool.None;
        OnPropertyChanged(string.Empty);
    }

    private void Correct(string what, Func<SectionDocument, PhotoPlaces, Result<SectionDocument>> correct)
    {
        if (Window.Live is not { } live || digitise.Section is not { } section || digitise.Photo is not { } photo)
        {
            return;
        }

        var kept = live.Measured(section).Then(read => PhotoPlaces.Of(photo, read).Then(at =>
            correct(read.Document, at).Then(corrected => JobCorrections.Keep(live.Folder, section, corrected))));
        if (kept.TryGet(out var next, out var problem))
        {
            // Only if nobody corrected the same section meanwhile: theirs is not to be lost.
            live.Do($"{what} ({Window.Job.NameOf(section)})", job => job.Section(section.Id) == section ? job.With(next) : job);
        }

        Problem = problem;
    }

    /// <summary>From places on a photo to places of a section.</summary>
    private sealed record PhotoPlaces(PhotoView View, Camera Camera, SectionPlacement Placement, double ThicknessMm, double Enlarged)
    {
        public double HandMm => HandPx * Camera.MillimetresPerPixel(Placement.Origin, ThicknessMm) / Math.Sqrt(3);

        public static Result<PhotoPlaces> Of(JobPhoto photo, MeasuredSection read) =>
            read.Document is { Camera: { } facts, Placement: { } placement }
                ? new PhotoPlaces(
                    new(photo.WidthPx, photo.HeightPx, photo.QuarterTurns, string.Empty), new(facts.Lens, facts.Pose), placement,
                    read.Document.Section.ThicknessMm, HandCorrecting.Enlargement(read.Document))
                : CorrectionProblems.NoPhoto();

        public SectionPoint Section(PixelPoint displayed)
        {
            var onPaper = Placement.ToSection(Camera.BackProject(View.FromDisplayed(displayed), ThicknessMm));
            return new(onPaper.XMm * Enlarged, onPaper.YMm * Enlarged);
        }
    }
}
