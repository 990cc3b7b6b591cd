using SectionScan.Metrology.Frames;
using SectionScan.Testing.Rendering;

namespace SectionScan.Testing.Tests.Rendering;

internal static class TestScenes
{
    /// <summary>A phone of 3 megapixels over the sheet, tilted, with one black elliptic slice right of the camera's foot point.</summary>
    public static PhotoScene Sheet(double tiltDegrees = 8, double azimuthDegrees = 20) => new(
        SceneTarget.Sheet,
        new(
            new(1571, 1571, 1011, 752, 0.095, -0.17, 0.0006, -0.0004, 0.065),
            CameraPlacing.LookAt(130, 90, 250, tiltDegrees, azimuthDegrees, 3)),
        2016,
        1512,
        11)
    {
        Slices = [new(1, Ellipse(17, 14), new(new(190, 80), default), 6, SliceMaterial.BlackRubber) { SawMarks = 0 }],
        Tags = [new(1, new(190, 108), default)],

        // From the right, so that the paper beyond the right edge lies in plain light.
        Light = new(default, [new(1500, 90, 1500, 1, LinearColour.Grey(1))]),
        Develop = DevelopSettings.Ideal,
    };

    public static SectionPoint[] Ellipse(double a, double b) =>
    [
        .. Enumerable.Range(0, 720).Select(k => new SectionPoint(a * Math.Cos(Math.Tau * k / 720), b * Math.Sin(Math.Tau * k / 720))),
    ];
}
