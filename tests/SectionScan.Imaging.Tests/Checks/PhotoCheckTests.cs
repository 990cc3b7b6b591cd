using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Digitising;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Checks;

/// <summary>Each verdict triggered by a photo; what each limit is for stands beside it in CheckRules.</summary>
public sealed class PhotoCheckTests : IDisposable
{
    private static readonly DigitiseSettings SixMillimetres = new() { ThicknessMm = 6, PrintRatio = (1, 1) };

    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("a little blurred", "too-blurred")]
    [InlineData("overexposed on one side", "paper-clipped")]
    [InlineData("dark", "too-dark")]
    [InlineData("black cut off", "black-crushed")]
    [InlineData("half size", "pixels-too-coarse")]
    [InlineData("dark on one side", "light-uneven")]
    [InlineData("half covered", "few-corners")]
    [InlineData("wavy", "target-fit")]
    [InlineData("far away", "target-small")]
    [InlineData("tilted by 32 degrees", "tilt-too-steep")]
    public void A_photo_with_one_weakness_is_fair_and_digitised_with_that_warning(string name, string code)
    {
        var photo = SpoiltPhotos.Make(name, folder);

        var report = PhotoCheck.Look(photo, SixMillimetres).ValueOrThrow();

        var item = Assert.Single(report.Items, i => i.Code == code);
        Assert.Equal((CheckVerdict.Fair, CheckVerdict.Fair), (item.Verdict, report.Verdict));
        Assert.NotEmpty(item.Remedy);
        Assert.Contains($"{item.Finding} {item.Remedy}", Digitiser.Digitise(photo, SixMillimetres).ValueOrThrow().Warnings);
    }

    [Fact]
    public void Each_slice_is_judged_under_the_name_of_its_station() => Assert.Equal(
        ["station 1", "station 2", "station 3", "station 4"],
        PhotoCheck.Look(SamplePhotos.PhotoPath("p01"), SixMillimetres).ValueOrThrow().Items
            .Where(item => item.Name.Contains("station", StringComparison.Ordinal)).Select(item => item.Name.Split(", ")[1]));

    [Theory]
    [InlineData("blurred", "too-blurred")]
    [InlineData("overexposed", "paper-clipped")]
    [InlineData("nearly black", "too-dark")]
    [InlineData("quarter size", "pixels-too-coarse")]
    [InlineData("nearly black on one side", "light-uneven")]
    [InlineData("tilted by 54 degrees", "tilt-too-steep")]
    public void A_photo_that_cannot_be_measured_is_poor_and_refused_for_the_same_reason(string name, string code)
    {
        var photo = SpoiltPhotos.Make(name, folder);

        var report = PhotoCheck.Look(photo, SixMillimetres).ValueOrThrow();

        Assert.Equal(CheckVerdict.Poor, report.Verdict);
        Assert.Contains(report.Items, i => i.Code == code && i.Verdict == CheckVerdict.Poor);
        Assert.False(Digitiser.Digitise(photo, SixMillimetres).TryGet(out _, out var problem));
        Assert.Equal(report.Items.First(i => i.Verdict == CheckVerdict.Poor).Code, problem.Code);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public void A_photo_without_a_target_is_poor_and_says_what_to_do()
    {
        using var grey = new OpenCvSharp.Mat(1200, 1600, OpenCvSharp.MatType.CV_8UC3, new OpenCvSharp.Scalar(128, 128, 128));
        var path = Path.Combine(folder, "grey.png");
        Assert.True(OpenCvSharp.Cv2.ImWrite(path, grey));

        var report = PhotoCheck.Look(path, SixMillimetres).ValueOrThrow();

        var item = Assert.Single(report.Items);
        Assert.Equal(("no-target", CheckVerdict.Poor), (item.Code, item.Verdict));
        Assert.NotEmpty(item.Remedy);
    }

    [Fact]
    public void A_good_photo_is_good_in_every_respect()
    {
        var report = PhotoCheck.Look(SamplePhotos.PhotoPath("p01"), SixMillimetres).ValueOrThrow();

        Assert.All(report.Items, item => Assert.Equal((item.Name, CheckVerdict.Good), (item.Name, item.Verdict)));
        Assert.Equal(SamplePhotos.TruthOf("p01").Sections.Count, report.Items.Count(i => i.Code == "wall-in-view"));
    }

    [Fact]
    public void A_square_on_photo_of_thick_slices_without_a_profile_does_not_know_its_height()
    {
        var item = Item(SamplePhotos.PhotoPath("p02"), 10, "height-unsure");

        Assert.Equal(CheckVerdict.Fair, item.Verdict);
    }

    [Fact]
    public void A_thick_slice_far_from_under_the_camera_shows_its_wall()
    {
        var truth = SamplePhotos.TruthOf("p03");
        var items = PhotoCheck.Look(SamplePhotos.PhotoPath("p03"), SixMillimetres with { ThicknessMm = 12 }).ValueOrThrow()
            .Items.Where(i => i.Code == "wall-in-view").ToArray();

        // The wall's foot is seen r·h/H nearer to the camera's foot point than its top (field geometry of a central projection).
        var expected = truth.Sections.Select(s => 12 / truth.Camera.HeightMm * s.Placement.Origin.DistanceTo(truth.Camera.FootPoint)).Max();
        Assert.Equal(expected, items.Max(i => i.Value), 0.03 * expected);
        Assert.Contains(items, i => i.Verdict == CheckVerdict.Fair);
    }

    private static CheckItem Item(string photo, double thicknessMm, string code) =>
        PhotoCheck.Look(photo, SixMillimetres with { ThicknessMm = thicknessMm }).ValueOrThrow().Items.First(i => i.Code == code);
}
