using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Testing.Sections;

/// <summary>Made-up sections: smooth blobs of the size of a port, the same for the same number.</summary>
public static class SampleSections
{
    /// <summary>A blob of 30 to 50 by 22 to 38 mm with gentle lobes.</summary>
    public static Outline Blob(int number, int points = 120)
    {
        var random = new Random(number);
        var (semiX, semiY) = (15 + (10 * random.NextDouble()), 11 + (8 * random.NextDouble()));
        var lobes = Enumerable.Range(2, 4).Select(k => (Order: k, Size: 0.12 * random.NextDouble() / k, Phase: 2 * Math.PI * random.NextDouble())).ToArray();
        return Outline.From(Enumerable.Range(0, points).Select(i =>
        {
            var angle = 2 * Math.PI * i / points;
            var radius = 1 + lobes.Sum(lobe => lobe.Size * Math.Cos((lobe.Order * angle) + lobe.Phase));
            return new SectionPoint(semiX * radius * Math.Cos(angle), semiY * radius * Math.Sin(angle));
        })).ValueOrThrow();
    }

    /// <summary>An ellipse, width and height in mm.</summary>
    public static Outline Ellipse(double widthMm, double heightMm, int points = 360) =>
        Outline.From(Enumerable.Range(0, points).Select(i =>
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * i / points);
            return new SectionPoint(widthMm / 2 * cos, heightMm / 2 * sin);
        })).ValueOrThrow();

    /// <summary>The document of an outline, from the photo with the given hash.</summary>
    public static string Document(Outline outline, int? station = 3, string? photoSha256 = null) => SectionDocumentFormat.Write(new(
        new(station, SectionSubject.Mould, 10, outline, [new("edge", [new NormalOffsetEffect(0.015)])], []),
        null,
        [],
        photoSha256 is null ? null : new("photo.jpg", photoSha256, 4000, 3000, null, null),
        null,
        null,
        new Dictionary<string, string>(),
        "SectionScan test"));
}
