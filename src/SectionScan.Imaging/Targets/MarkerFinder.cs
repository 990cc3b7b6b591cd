using OpenCvSharp;
using OpenCvSharp.Aruco;
using SectionScan.Metrology.Frames;

namespace SectionScan.Imaging.Targets;

/// <summary>Square markers in a picture.</summary>
internal static class MarkerFinder
{
    /// <summary>Finds the markers of a dictionary.</summary>
    /// <param name="grey">H × W, CV_8UC1.</param>
    /// <param name="dictionary">The dictionary.</param>
    /// <returns>Id and four corners in px of <paramref name="grey"/> (pixel centres): clockwise on the print from its top left.</returns>
    public static IReadOnlyList<(int Id, PixelPoint[] Corners)> Find(Mat grey, PredefinedDictionaryType dictionary)
    {
        var parameters = new DetectorParameters
        {
            // A marker of the sheet is about 1/17 of the frame's width; three window sizes cover sharp, soft and unevenly lit ones.
            AdaptiveThreshWinSizeMin = 7,
            AdaptiveThreshWinSizeMax = 47,
            AdaptiveThreshWinSizeStep = 20,
            MinMarkerPerimeterRate = 0.02,
            CornerRefinementMethod = CornerRefineMethod.None,
        };
        using var bits = CvAruco.GetPredefinedDictionary(dictionary);
        using var detector = new ArucoDetector(bits, parameters, new RefineParameters());
        detector.DetectMarkers(grey, out var corners, out var ids, out _);
        var found = new List<(int, PixelPoint[])>(ids.Length);
        for (var i = 0; i < ids.Length; i++)
        {
            found.Add((ids[i], Array.ConvertAll(corners[i], c => new PixelPoint(c.X, c.Y))));
        }

        return found;
    }
}
