using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Tests.Documents;

/// <summary>Documents of an ellipse with semi-axes 20 and 14 mm.</summary>
internal static class SectionDocuments
{
    public static SectionDocument Full() => new(
        new(
            3,
            SectionSubject.Mould,
            10.05,
            Ellipse(360),
            [
                new("print scale", [LinearEffect.Scale(0.00025), new LinearEffect(0.0001, 0, 0, 1.0 / 3)]),
                new("edge", [new NormalOffsetEffect(0.015), new RandomEdgeEffect(0.003, 0.08)], IsAssumed: true),
                new("slice thickness", [new FacingOffsetEffect(0.02, 0.6, -0.8)]),
                new("wall like the face", [new LocalOffsetEffect(0.31, 17.5, -3.2, 4.5)], IsAssumed: true),
            ],
            ["The slice leans 2° <to the left>; \"check\" it."]),
        new(new(101.123456, 62.5), Angle.FromRadians(0.1)),
        [new(121.123456, 62.5), new(101.1, 48.5), new(81.1, 62.5)],
        new("p01.jpg", new string('a', 64), 4032, 3024, null, "2025-05-01T10:00:00"),
        new("sheet", 36, 36, 0.21, 1.0003, 0.9991),
        new("profile", 3100.5, 450.25, 0.6, 2.5, new(3100.5, 3101, 2015.5, 1511.5, -0.1, 0.02, 1e-4, -2e-4, 0), new(0.01, -0.02, 1.5e-7, -130, -90, 450)),
        new Dictionary<string, string> { ["thickness"] = "10.05", ["subject"] = "mould", ["Höhe"] = "½" },
        "SectionScan 0.1.0");

    public static SectionDocument Bare() => new(
        new(null, SectionSubject.Opening, 0, Ellipse(12), [], []), null, [], null, null, null, new Dictionary<string, string>(), "SectionScan 0.1.0");

    public static SectionDocument Target() => Bare() with
    {
        Section = new(4, SectionSubject.Target, 0, Ellipse(360), [], []),
        Marks = new(
            new(new(1.5, -3), new(1.25, 12)), new(new(-15, -14), new(15, -13.5)),
            new Dictionary<string, SectionPoint> { ["parting line"] = new(-20, 0.5), ["boss"] = new(1, 13) }),
        TargetShape = new(
            new("as-cast, station 4", new string('b', 64)), new("exemplar, station 4", new string('c', 64)),
            new(0.12, -0.05, 1.5, 1.01, true), ["60 % toward the exemplar at the sides."],
            [new("floor", 0), new("right wall", 0.6)],
            [
                new("width", 36, "mm", "wider meant relocating the oil drain", 36.8, [new(-20.5, 18, "right wall", 0.4)]),
                new("area", 1100, "mm²", "", 1080, []),
            ]),
    };

    public static Outline Ellipse(int count) => Outline.From(Enumerable.Range(0, count).Select(i =>
    {
        var (sin, cos) = Math.SinCos(2 * Math.PI * i / count);
        return new SectionPoint(20 * cos, 14 * sin);
    })).ValueOrThrow();
}
