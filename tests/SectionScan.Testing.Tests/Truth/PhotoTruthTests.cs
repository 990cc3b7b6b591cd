using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Truth;

namespace SectionScan.Testing.Tests.Truth;

public class PhotoTruthTests
{
    // The files give six decimals of the rotation and the translation.
    private const double RoundingPx = 0.001;

    public static TheoryData<string> Names => new(
        Directory.EnumerateFiles(Path.Combine(SamplePhotos.Folder, "truth"), "*.json").Select(Path.GetFileNameWithoutExtension).Order()!);

    [Theory]
    [MemberData(nameof(Names))]
    public void Turning_the_stored_camera_gives_the_displayed_one(string name)
    {
        var truth = SamplePhotos.TruthOf(name);
        var (stored, width, height) = PhotoTruth.ReadSensorCamera(SamplePhotos.TruthPath(name));

        var displayed = CameraPlacing.Displayed(stored, width, height, truth.Orientation);

        foreach (var p in new TargetPoint[] { new(0, 0), new(260, 0), new(130, 90), new(0, 180), new(260, 180) })
        {
            Assert.True(displayed.Project(p, 6).DistanceTo(truth.Camera.Project(p, 6)) < RoundingPx);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Polygons_agree_with_the_figures_beside_them(string name)
    {
        foreach (var section in SamplePhotos.TruthOf(name).Sections)
        {
            var again = SectionTruth.Of(
                section.Name, section.Station, section.Outline, section.Placement, section.IsOpening, section.ThicknessMm,
                section.WallDraftTangent, section.TagUp);

            // The figures come from the full polygon, which was thinned for the file.
            Assert.Equal(section.AreaMm2, again.AreaMm2, section.AreaMm2 * 1e-4);
            Assert.Equal(section.PerimeterMm, again.PerimeterMm, section.PerimeterMm * 1e-3);
            Assert.Equal(section.WidthMm, again.WidthMm, 0.002);
            Assert.Equal(section.HeightMm, again.HeightMm, 0.002);
            Assert.True(PolygonMoments.SignedAreaMm2(section.Outline) > 0);
        }
    }
}
