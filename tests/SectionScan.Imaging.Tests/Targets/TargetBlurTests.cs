using OpenCvSharp;
using SectionScan.Imaging.Targets;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Targets;

public class TargetBlurTests
{
    // The edge is read over a ninth of a square, so that its far ends are not quite level; and pixels are whole.
    private const double Tolerance = 0.12;

    [Theory]
    [InlineData("p01", 2)]
    [InlineData("p01", 3)]
    [InlineData("p04", 3)]
    public void A_gaussian_blur_adds_to_the_photos_own_in_squares(string name, double sigmaPx)
    {
        using var sharp = Cv2.ImRead(SamplePhotos.PhotoPath(name), ImreadModes.Grayscale | ImreadModes.IgnoreOrientation);
        using var blurred = sharp.GaussianBlur(new Size(0, 0), sigmaPx);

        var own = TargetBlur.Px(sharp, TargetFinder.Find(sharp, name).ValueOrThrow());
        var both = TargetBlur.Px(blurred, TargetFinder.Find(blurred, name).ValueOrThrow());

        var expected = Math.Sqrt((own * own) + (sigmaPx * sigmaPx));
        Assert.InRange(both, (1 - Tolerance) * expected, (1 + Tolerance) * expected);
    }

    [Theory]
    [InlineData("p01")]
    [InlineData("p03")]
    [InlineData("p08")]
    public void A_sharp_photo_is_blurred_by_less_than_two_pixels(string name)
    {
        using var photo = Cv2.ImRead(SamplePhotos.PhotoPath(name), ImreadModes.Grayscale | ImreadModes.IgnoreOrientation);

        Assert.InRange(TargetBlur.Px(photo, TargetFinder.Find(photo, name).ValueOrThrow()), 0.1, 2);
    }
}
