using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Photos;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Scales;

/// <summary>From a source of scale to the photo's camera with what is not known of it.</summary>
internal static class ScaleFinder
{
    /// <summary>Finds the scale.</summary>
    /// <param name="photo">The photo.</param>
    /// <param name="path">Its file.</param>
    /// <param name="source">Where the scale comes from.</param>
    /// <param name="settings">Lens and thickness.</param>
    public static Result<ImageScale> Find(Photo photo, string path, ScaleSource source, DigitiseSettings settings)
    {
        if (source is ScanScale scan)
        {
            return ScanScaling.Find(photo, path, scan);
        }

        var (width, height) = (photo.Colour.Width, photo.Colour.Height);
        var prior = settings.Lens is null
            ? LensPrior.FromExif(width, height, photo.Focal35Mm)
            : settings.Lens.PriorFor(width, height, path);
        return prior.Then(lens => source switch
        {
            CheckerboardScale board => CheckerboardScaling.Find(photo, path, board, lens),
            PointsScale points => PickedScaling.Find(photo, path, points, lens),
            RectangleScale rectangle => PickedScaling.Find(photo, path, rectangle, lens),
            _ => throw new ArgumentException($"No scale comes from {source.GetType().Name}.", nameof(source)),
        });
    }
}
