using System.ComponentModel;
using System.Globalization;
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
public sealed partial class CorrectViewModel : PlaceViewModel
{
    // A place picked on the photo is good to two pixels, rectangular (common practice, no source).
    private const double HandPx = 2;

    private const double ReachMm = 4;
    private const int HighestStation = 999;
    private const double LargestTurnDeg = 180;

    private readonly DigitiseViewModel digitise;
    private readonly List<PixelPoint> picked = [];
    private (LiveJob? Live, JobPhoto? Photo, JobSection? Section) on;

    /// <summary>Makes it.</summary>
    /// <param name="window">The window.</param>
    /// <param name="digitise">Tells which photo and section are on show.</param>
    public CorrectViewModel(JobViewModel window, DigitiseViewModel digitise)
        : base(window)
    {
        ArgumentNullException.ThrowIfNull(digitise);
        this.digitise = digitise;
        digitise.PropertyChanged += OnShownChanged;
        on = Shown();
    }

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

    /// <summary>Tells the station of the section on show; empty for none.</summary>
    public void SetStation(string? typed)
    {
        var text = (typed ?? string.Empty).Trim();
        var isNumber = int.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var station);
        if (text.Length > 0 && !(isNumber && station is >= 0 and <= HighestStation))
        {
            Problem = new(
                "station-unlikely", $"\"{text}\" is no station: it is a whole number from 0 to {HighestStation}. The station stays as it was.", "station",
                "Count stations with the flow, from the entry; a section between two of them needs a number of its own.");
            return;
        }

        Correct("Set the station", (document, _) => HandCorrecting.SetStation(document, text.Length > 0 ? station : null));
    }

    /// <summary>Turns the up of the section on show, degrees counter-clockwise as seen on the photo.</summary>
    public void TurnUp(double degrees)
    {
        if (double.IsFinite(degrees) && Math.Abs(degrees) <= LargestTurnDeg)
        {
            Correct("Turn up", (document, _) => HandCorrecting.TurnUp(document, Angle.FromDegrees(degrees)));
        }
    }

    /// <inheritdoc/>
    protected override void Dispose(bool isDisposing)
    {
        if (isDisposing)
        {
            digitise.PropertyChanged -= OnShownChanged;
        }

        base.Dispose(isDisposing);
    }

    /// <inheritdoc/>
    protected override void OnOtherJob() => Forget();

    private (LiveJob? Live, JobPhoto? Photo, JobSection? Section) Shown() => Window.Live is null ? default : (Window.Live, digitise.Photo, digitise.Section);

    /// <summary>Places picked on one photo, and what was said of one section, mean nothing on another.</summary>
    private void OnShownChanged(object? sender, PropertyChangedEventArgs e)
    {
        var now = Shown();
        if (now.Live != on.Live || now.Photo?.Id != on.Photo?.Id || now.Section != on.Section)
        {
            on = now;
            picked.Clear();
            Problem = null;
            OnPropertyChanged(string.Empty);
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
        Problem = null;
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
            var isMade = false;
            live.Do($"{what} ({Window.Job.NameOf(section)})", job => (isMade = job.Section(section.Id) == section) ? job.With(next) : job);
            problem = isMade ? null : CorrectionProblems.SectionChanged();
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
