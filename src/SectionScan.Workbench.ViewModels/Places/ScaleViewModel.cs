using System.ComponentModel;
using CommunityToolkit.Mvvm.ComponentModel;
using CommunityToolkit.Mvvm.Input;
using SectionScan.Jobs.PortingJobs;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.ViewModels.Places;

/// <summary>What is told of a photo by picking places on it before it is digitised (again): its scale when it shows no printed target, with
/// what was measured between the places; and slices that were missed.</summary>
public sealed partial class ScaleViewModel : PlaceViewModel
{
    private const double LongestMm = 5000;
    private const int MostSeeds = 50;

    private readonly DigitiseViewModel digitise;
    private readonly CorrectViewModel correct;
    private readonly List<PixelPoint> picked = [];
    private string? pickedOn;

    /// <summary>Makes it.</summary>
    /// <param name="window">The window.</param>
    /// <param name="digitise">Tells which photo is on show.</param>
    /// <param name="correct">Whose tool is put away when one is taken here.</param>
    public ScaleViewModel(JobViewModel window, DigitiseViewModel digitise, CorrectViewModel correct)
        : base(window)
    {
        ArgumentNullException.ThrowIfNull(digitise);
        ArgumentNullException.ThrowIfNull(correct);
        this.digitise = digitise;
        this.correct = correct;
        digitise.PropertyChanged += OnShownChanged;
        correct.PropertyChanged += OnCorrectChanged;
    }

    /// <summary>What is being picked.</summary>
    [ObservableProperty]
    public partial ScaleTool Tool { get; private set; }

    /// <summary>The points' distance, or the rectangle's width as displayed, mm, as typed.</summary>
    [ObservableProperty]
    public partial string Width { get; set; } = string.Empty;

    /// <summary>The rectangle's height as displayed, mm, as typed.</summary>
    [ObservableProperty]
    public partial string Height { get; set; } = string.Empty;

    /// <summary>Why the scale was not taken, or null.</summary>
    [ObservableProperty]
    public partial Problem? Problem { get; private set; }

    /// <summary>The places picked so far, px as displayed; without a tool those of the scale in use.</summary>
    public IReadOnlyList<PixelPoint> Picked => Tool is ScaleTool.TwoPoints or ScaleTool.Rectangle ? picked : digitise.Photo?.Scale?.Places ?? [];

    /// <summary>Slices that were pointed to on the photo on show, px as displayed.</summary>
    public IReadOnlyList<PixelPoint> Seeds => digitise.Photo?.Seeds ?? [];

    /// <summary>The scale that the photo on show has, in words; empty for a printed target.</summary>
    public string InUse => digitise.Photo?.Scale switch
    {
        null => string.Empty,
        { HeightMm: { } height, WidthMm: var width } => FormattableString.Invariant($"Scale from a rectangle of {width:0.###} × {height:0.###} mm."),
        { WidthMm: var distance } => FormattableString.Invariant($"Scale from two points {distance:0.###} mm apart."),
    };

    /// <summary>What to do next, in words.</summary>
    public string Instruction => (Tool, Needed - picked.Count) switch
    {
        (ScaleTool.None, _) => string.Empty,
        (ScaleTool.MissedSlice, _) => "Click the middle of each slice that was missed, then digitise this photo again.",
        (_, 0) => "To shift a place, click where it should be. Then enter what was measured between them.",
        (ScaleTool.TwoPoints, 2) => "Click the first of two points whose distance you know; the magnifier shows where.",
        (ScaleTool.TwoPoints, _) => "Click the second point.",
        (_, var left) => FormattableString.Invariant($"Click the corners of the rectangle, in any order; {left} to go."),
    };

    /// <summary>True when all places are picked.</summary>
    public bool IsPicked => Tool is ScaleTool.TwoPoints or ScaleTool.Rectangle && picked.Count == Needed;

    private int Needed => Tool == ScaleTool.Rectangle ? 4 : 2;

    /// <summary>A place picked on the photo on show, px as displayed. When all are picked, the nearest goes there.</summary>
    public void Pick(double xPx, double yPx)
    {
        if (Tool == ScaleTool.None || digitise.Photo is not { } photo || !double.IsFinite(xPx) || !double.IsFinite(yPx))
        {
            return;
        }

        pickedOn = photo.Id;
        var place = new PixelPoint(xPx, yPx);
        if (Tool == ScaleTool.MissedSlice)
        {
            Window.Live?.Do($"Point to a missed slice in {photo.GivenName}", job => job.Photo(photo.Id) is { } now && now.Seeds.Count < MostSeeds
                ? job.With(now with { Seeds = [.. now.Seeds, place] })
                : job);
            return;
        }

        if (picked.Count < Needed)
        {
            picked.Add(place);
        }
        else
        {
            picked[picked.IndexOf(picked.MinBy(place.DistanceTo))] = place;
        }

        OnPropertyChanged(string.Empty);
    }

    /// <inheritdoc/>
    protected override void OnOtherJob() => Forget();

    /// <inheritdoc/>
    protected override void Dispose(bool isDisposing)
    {
        if (isDisposing)
        {
            digitise.PropertyChanged -= OnShownChanged;
            correct.PropertyChanged -= OnCorrectChanged;
        }

        base.Dispose(isDisposing);
    }

    private void OnShownChanged(object? sender, PropertyChangedEventArgs e)
    {
        if (picked.Count > 0 && Window.Live is not null && digitise.Photo?.Id != pickedOn)
        {
            picked.Clear();
            Problem = null;
            OnPropertyChanged(string.Empty);
        }
    }

    /// <summary>One tool in the hand at a time.</summary>
    private void OnCorrectChanged(object? sender, PropertyChangedEventArgs e)
    {
        if (correct.Tool != CorrectionTool.None && Tool != ScaleTool.None)
        {
            Forget();
        }
    }

    [RelayCommand]
    private void Take(ScaleTool tool)
    {
        picked.Clear();
        Problem = null;
        Tool = Tool == tool ? ScaleTool.None : tool;
        if (Tool != ScaleTool.None)
        {
            correct.ForgetCommand.Execute(null);
        }

        OnPropertyChanged(string.Empty);
    }

    [RelayCommand]
    private void Forget()
    {
        picked.Clear();
        (Tool, Problem) = (ScaleTool.None, null);
        OnPropertyChanged(string.Empty);
    }

    [RelayCommand]
    private void Use()
    {
        if (!IsPicked || digitise.Photo is not { } photo)
        {
            return;
        }

        var isRectangle = Tool == ScaleTool.Rectangle;
        double? height = null;
        if (!TryLength(Width, isRectangle ? "width" : "distance", out var width) || (isRectangle && !TryLength(Height, "height", out height)))
        {
            return;
        }

        SetScale(photo, "Set the scale of", new(isRectangle ? PickedScale.InOrder(picked) : [.. picked], width!.Value, height));
        Forget();
    }

    [RelayCommand]
    private void UsePrinted()
    {
        if (digitise.Photo is { Scale: not null } photo)
        {
            SetScale(photo, "Use the printed target of", null);
        }
    }

    [RelayCommand]
    private void ForgetSeeds()
    {
        if (digitise.Photo is { Seeds.Count: > 0 } photo)
        {
            Window.Live?.Do($"Point to no missed slice in {photo.GivenName}", job => job.Photo(photo.Id) is { } now ? job.With(now with { Seeds = [] }) : job);
        }
    }

    private void SetScale(JobPhoto photo, string what, PickedScale? scale) => Window.Live?.Do(
        $"{what} {photo.GivenName}", job => job.Photo(photo.Id) is { } now ? job.With(now with { Scale = scale }) : job);

    private bool TryLength(string typed, string where, out double? mm)
    {
        if (!NumberEntry.TryRead(typed, where, FieldUnit.Length, Window.Units.IsInch, out mm, out var problem) || !(mm is > 0 and <= LongestMm))
        {
            Problem = problem ?? new(
                "length-unlikely", FormattableString.Invariant($"A length of more than 0 and up to {LongestMm} mm is needed."), where,
                "Measure between the places that you picked, and enter what you read.");
            return false;
        }

        return true;
    }
}
