using SectionScan.Imaging.Photos;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;

namespace SectionScan.Imaging.Scales;

/// <summary>The scale of a flatbed scan.</summary>
internal static class ScanScaling
{
    // Flatbed scanners are true to 0.1 to 0.3 % in each direction unless checked (common practice, no source).
    private const double ScannerRelative = 0.002;

    // A scanner looks square on everywhere; a camera this high stands in for it: 6 mm of height make 6e-6 of scale.
    private const double StandInHeightMm = 1e6;

    /// <summary>Finds the scale.</summary>
    public static Result<ImageScale> Find(Photo photo, string path, ScanScale scan)
    {
        DotsPerInch dots;
        if (scan.DotsPerInch is { } told)
        {
            dots = new(told, told);
        }
        else if (!ScanResolution.Read(path).TryGet(out dots, out var problem))
        {
            return problem;
        }

        // The plane's origin is the outer corner of the picture that is displayed at the top left.
        var (width, height) = (photo.Colour.Width * Inch.Mm / dots.Across, photo.Colour.Height * Inch.Mm / dots.Down);
        var lens = new Lens(
            StandInHeightMm * dots.Across / Inch.Mm, StandInHeightMm * dots.Down / Inch.Mm, -0.5, -0.5, 0, 0, 0, 0, 0);
        var (x, y) = photo.QuarterTurns switch
        {
            1 => (0.0, height),
            2 => (width, height),
            3 => (width, 0.0),
            _ => (0.0, 0.0),
        };
        var camera = new Camera(lens, new(0, 0, -photo.QuarterTurns * Math.PI / 2, x, y, StandInHeightMm));
        return new ImageScale(
            camera, new("scan", 0, 0, 0, 1, 1), ImageScale.FactsOf(camera, "scan", 0), [],
            new("scanner", ScannerRelative, ScannerRelative, IsShared: false, IsAssumed: true), [],
            ["The scanner's resolution is taken as true to 0.2 % in each direction, and the face as lying on the glass, where height changes nothing. Scan a steel rule both ways once to know your scanner, and lay the face down."]);
    }
}
