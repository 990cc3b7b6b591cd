using SectionScan.Imaging.Lenses;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Jobs.Lenses;

/// <summary>Makes lens profiles from photos and keeps them as files.</summary>
public static class LensFiles
{
    /// <summary>Makes a profile and writes it.</summary>
    /// <param name="photos">Photos of the bare sheet.</param>
    /// <param name="printRatio">Measured over nominal length of the check bars.</param>
    /// <param name="path">Where to write the profile.</param>
    /// <param name="progress">Told of each photo.</param>
    /// <param name="checkerboardMm">Side of the squares when the photos show a plain checkerboard; null for the sheet or the card.</param>
    public static Result<LensProfiling> Make(
        IReadOnlyList<string> photos, (double X, double Y) printRatio, string path, IProgress<JobProgress>? progress = null,
        double? checkerboardMm = null)
    {
        ArgumentNullException.ThrowIfNull(photos);
        var steps = new StepCounter(photos.Count, progress);
        return LensProfiler.Make(photos, printRatio.X, printRatio.Y, steps, checkerboardMm)
            .Then(made => OutputFolder.WriteFile(path, LensProfileFormat.Write(made.Profile)).Then<LensProfiling>(_ => made));
    }

    /// <summary>Reads a profile.</summary>
    public static Result<LensProfile> Read(string path) =>
        TextFile.Read(path, LensProfileFormat.MaximumBytes).Then(text => LensProfileFormat.Read(text, path));
}
