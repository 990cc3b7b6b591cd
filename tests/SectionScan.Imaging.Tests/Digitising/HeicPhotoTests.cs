using SectionScan.Imaging.Digitising;
using SectionScan.Imaging.Tests.Photos;
using SectionScan.Metrology.Measures;
using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests.Digitising;

public class HeicPhotoTests
{
    // Encoded once more, with colour at half resolution: a fiftieth of a pixel (0.003 mm) and 0.05 % of the area are the most it may cost.
    [Fact]
    public void A_phones_own_format_gives_the_same_sections_as_its_JPEG()
    {
        var folder = Directory.CreateTempSubdirectory("sectionscan-").FullName;
        try
        {
            var settings = new DigitiseSettings { ThicknessMm = 6, PrintRatio = (1, 1) };
            var jpeg = Digitiser.Digitise(SamplePhotos.PhotoPath("p01"), settings).ValueOrThrow();

            var heic = Digitiser.Digitise(HeicFile.Encode(SamplePhotos.PhotoPath("p01"), Path.Combine(folder, "p01.heic"), 92), settings).ValueOrThrow();

            Assert.Equal(jpeg.Sections.Select(s => s.Station), heic.Sections.Select(s => s.Station));
            Assert.All(jpeg.Sections.Zip(heic.Sections), pair =>
            {
                var (one, other) = (PolygonFacts.Of(pair.First.Outline), PolygonFacts.Of(pair.Second.Outline));
                Assert.InRange(MeasureCatalogue.Area.Definition(other) / MeasureCatalogue.Area.Definition(one), 0.9995, 1.0005);
                Assert.Equal(MeasureCatalogue.Width.Definition(one), MeasureCatalogue.Width.Definition(other), 0.02);
            });
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
