using OpenCvSharp;
using SectionScan.Imaging.Checks;
using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Scales;
using SectionScan.Imaging.Tests.Checks;
using SectionScan.Imaging.Tests.Scales;
using SectionScan.Metrology.Cameras;
using SectionScan.Testing.Rendering;
using SectionScan.Testing.Shapes;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Digitising;

/// <summary>Refusals that no other test's photo triggers, each by a photo of its own.</summary>
public sealed class RefusalTests : IDisposable
{
    private static readonly DigitiseSettings SixMillimetres = new() { ThicknessMm = 6, PrintRatio = (1, 1) };

    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;

    public void Dispose() => Directory.Delete(folder, recursive: true);

    [Theory]
    [InlineData("very wavy", "target-does-not-fit")]
    [InlineData("all but the left border covered", "corners-badly-spread")]
    [InlineData("all but one corner covered", "too-few-corners")]
    public void A_target_that_cannot_be_used_is_refused_by_digitise_and_poor_in_the_check(string name, string code)
    {
        var photo = SpoiltPhotos.Make(name, folder);

        Refuses(photo, SixMillimetres, code);
        Assert.Contains(PhotoCheck.Look(photo, SixMillimetres).ValueOrThrow().Items, i => i.Code == code && i.Verdict == CheckVerdict.Poor);
    }

    [Fact]
    public void Openings_on_the_sheet_and_slices_beside_the_card_are_the_wrong_target()
    {
        Refuses(SamplePhotos.PhotoPath("p01"), SixMillimetres with { LooksForOpenings = true }, "wrong-target");
        Refuses(SamplePhotos.PhotoPath("p08"), SixMillimetres with { LooksForOpenings = false }, "wrong-target");
    }

    [Fact]
    public void A_slice_thicker_than_half_the_camera_s_height_is_impossible() =>
        Refuses(SamplePhotos.PhotoPath("p01"), SixMillimetres with { ThicknessMm = 400 }, "thickness-impossible");

    [Fact]
    public void A_face_without_openings_says_so() => Refuses(Card("bare.jpg"), SixMillimetres, "no-openings");

    // The camera sees from about −88 to 168 mm across at the card's height; the opening reaches from 146 to 182 mm.
    [Fact]
    public void An_opening_that_the_frame_cuts_is_told() => Refuses(
        Card("cut.jpg", new SceneOpening([.. AnalyticShapes.Circle(18).Points], new(new(164, 30), default), 20, 0)), SixMillimetres, "opening-runs-off");

    [Fact]
    public void A_thing_that_the_frame_cuts_is_refused_on_a_plain_ground_too()
    {
        using var picture = FlatPicture.Draw(FlatPicture.CameraOver(60, 60, 380, 0, 0), (x, y) => FlatPicture.Disc(x, y, -98, 60, 16) ? 0.1 : 0.75);
        var photo = Path.Combine(folder, "cut.png");
        Assert.True(Cv2.ImWrite(photo, picture));

        Refuses(photo, new() { ThicknessMm = 0, Scale = new PointsScale(new(300, 300), new(1300, 300), 200) }, "object-runs-off");
    }

    [Fact]
    public void A_file_larger_than_any_photo_is_not_read()
    {
        // Sparse: its length is told, nothing is stored.
        var path = Path.Combine(folder, "large.jpg");
        using (var file = File.Create(path))
        {
            file.SetLength(200_000_001);
        }

        Refuses(path, SixMillimetres, "photo-file-too-large");
    }

    [Fact]
    public void A_file_that_the_system_does_not_give_is_told()
    {
        // A process's memory begins with a page that cannot be read (proc(5)); elsewhere there is no such file.
        if (File.Exists("/proc/self/mem"))
        {
            Refuses("/proc/self/mem", SixMillimetres, "photo-unreadable");
        }
    }

    private static void Refuses(string photo, DigitiseSettings settings, string code)
    {
        Assert.False(Digitiser.Digitise(photo, settings).TryGet(out _, out var problem));
        Assert.Equal(code, problem.Code);
        Assert.NotEmpty(problem.Remedy);
        Assert.Equal(photo, problem.Where);
    }

    /// <summary>A card on a sawn face, of three megapixels.</summary>
    private string Card(string name, params SceneOpening[] openings)
    {
        var camera = new Camera(new(1571, 1571, 1008, 756, 0, 0, 0, 0, 0), CameraPlacing.LookAt(40, 25, 200, 3, 20, 0));
        var scene = new PhotoScene(SceneTarget.Card, camera, 2016, 1512, 7)
        {
            Label = new("Example", "Example phone", 28, "2025:06:14 10:30:00"),
            Openings = openings,
        };
        return PhotoRenderer.Render(scene).SaveTo(folder, name);
    }
}
