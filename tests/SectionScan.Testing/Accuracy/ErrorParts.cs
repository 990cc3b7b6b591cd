using SectionScan.Imaging.Digitising;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Accuracy;

/// <summary>Where an error comes from: the same photo with one part after another replaced by the truth.</summary>
public static class ErrorParts
{
    /// <summary>The error of the measured edge alone: its pixels, seen through the true camera at the true height of the face.</summary>
    public static PhotoVerdict WithTrueCamera(PhotoVerdict verdict, PhotoTruth truth)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(truth);
        return Rescored(verdict, found => [.. found.Section.DisplayedPixels.Select(p => truth.Camera.BackProject(p, found.Truth.ThicknessMm))]);
    }

    /// <summary>The error of the found camera and the told thickness alone: the pixels of the true edge, seen through that camera.</summary>
    public static PhotoVerdict WithTrueEdge(PhotoVerdict verdict, PhotoTruth truth)
    {
        ArgumentNullException.ThrowIfNull(verdict);
        ArgumentNullException.ThrowIfNull(truth);
        return verdict.Photo is not { } photo ? verdict : Rescored(verdict, found => TrueEdge(found, photo, truth));
    }

    private static TargetPoint[] TrueEdge(FoundSection found, DigitisedPhoto photo, PhotoTruth truth)
    {
        var isTurned = truth.Orientation is 6 or 8;
        var (width, height) = isTurned ? (truth.HeightPx, truth.WidthPx) : (truth.WidthPx, truth.HeightPx);
        var camera = CameraPlacing.Displayed(new Camera(photo.Camera.Lens, photo.Camera.Pose), width, height, truth.Orientation);
        return Array.ConvertAll(
            found.Truth.PlacedOutline, p => camera.BackProject(truth.Camera.Project(p, found.Truth.ThicknessMm), found.Section.ThicknessMm));
    }

    private static PhotoVerdict Rescored(PhotoVerdict verdict, Func<FoundSection, TargetPoint[]> edge) => verdict with
    {
        Found = [.. verdict.Found.Select(found =>
        {
            var placed = edge(found);
            var upAsRead = found.Truth with { TagUp = found.Section.Placement.Up };
            return found with { Score = SectionScoring.Score(upAsRead, Array.ConvertAll(placed, found.Section.Placement.ToSection), placed) };
        })],
    };
}
