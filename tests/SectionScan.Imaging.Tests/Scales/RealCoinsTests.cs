using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Lenses;
using SectionScan.Imaging.Scales;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Testing.Truth;
using Xunit.Abstractions;

namespace SectionScan.Imaging.Tests.Scales;

/// <summary>Coins photographed by a coarse, strongly distorting camera: lens and pose from other photos of a plain checkerboard.</summary>
public class RealCoinsTests(ITestOutputHelper output)
{
    private const double SquareMm = 166.0 / 11;

    // A pixel covers 0.2 mm and the rim of a coin is round: its widest place lies below the top.
    private const double RelativeTolerance = 0.017;

    private static readonly Lazy<LensProfile> Lens = new(() => LensProfiler.Make(
        [.. Enumerable.Range(0, 10).Select(i => Path.Combine(RealPhotos.Folder!, "calib", $"{i}.png"))], 1, 1, null, SquareMm).ValueOrThrow().Profile);

    // Diameter and thickness: Council Regulation (EC) No 975/98, annex I.
    [RealPhotosTheory]
    [InlineData("50 cent", 288, 612, 24.25, 2.38)]
    [InlineData("10 cent", 756, 582, 19.75, 1.93)]
    [InlineData("10 cent", 500, 386, 19.75, 1.93)]
    public void A_coin_has_its_official_diameter(string name, double x, double y, double diameterMm, double thicknessMm)
    {
        var settings = new DigitiseSettings
        {
            Lens = Lens.Value,
            ThicknessMm = thicknessMm,
            Scale = new CheckerboardScale(SquareMm, Path.Combine(RealPhotos.Folder!, "pose.png")),
        };

        var photo = Digitiser.Digitise(Path.Combine(RealPhotos.Folder!, "coins.png"), settings).ValueOrThrow();

        Assert.Equal(3, photo.Sections.Count);
        var coin = photo.Sections.MinBy(s => Middle(s.DisplayedPixels).DistanceTo(new(x, y)))!;
        Assert.InRange(Middle(coin.DisplayedPixels).DistanceTo(new(x, y)), 0, 12);
        var measured = MeasuredOutline.Of(coin.Outline, coin.ErrorSources)[MeasureCatalogue.EquivalentDiameter].Estimate;
        output.WriteLine(FormattableString.Invariant(
            $"{name}: {measured.Value:0.00} ± {measured.ExpandedUncertainty:0.00} mm, official {diameterMm:0.00}, off by {100 * ((measured.Value / diameterMm) - 1):0.00} %; camera {photo.Camera.HeightMm:0.0} mm, {photo.Camera.TiltDeg:0.0} degrees, target {photo.Target.RmsPx:0.00} px"));
        Assert.InRange(measured.Value, (1 - RelativeTolerance) * diameterMm, (1 + RelativeTolerance) * diameterMm);
    }

    private static PixelPoint Middle(IReadOnlyList<PixelPoint> points) => new(points.Average(p => p.X), points.Average(p => p.Y));
}
