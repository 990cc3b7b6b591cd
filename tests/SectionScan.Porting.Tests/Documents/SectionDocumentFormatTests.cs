using System.Text;
using System.Text.Json;
using CsCheck;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Porting.Tests.Documents;

public class SectionDocumentFormatTests
{
    [Fact]
    public void What_was_read_writes_the_same_bytes_again()
    {
        foreach (var document in new[] { SectionDocuments.Full(), SectionDocuments.Bare(), SectionDocuments.Target() })
        {
            var text = SectionDocumentFormat.Write(document);

            var again = SectionDocumentFormat.Write(SectionDocumentFormat.Read(text, "test").ValueOrThrow());

            Assert.Equal(text, again);
        }
    }

    [Fact]
    public void Reading_back_gives_the_very_numbers_of_the_rounded_document()
    {
        var rounded = SectionDocuments.Full().Rounded().ValueOrThrow();

        var read = SectionDocumentFormat.Read(SectionDocumentFormat.Write(SectionDocuments.Full()), "test").ValueOrThrow();

        Assert.Equal(rounded.Section.Outline.Points.ToArray(), read.Section.Outline.Points.ToArray());
        Assert.Equal(PolygonMoments.Of(rounded.Section.Outline.Points), PolygonMoments.Of(read.Section.Outline.Points));
        Assert.Equal(rounded.PlacedOutline, read.PlacedOutline);
        Assert.Equal(rounded.Placement, read.Placement);
        Assert.Equal(rounded.Photo, read.Photo);
        Assert.Equal(rounded.Target, read.Target);
        Assert.Equal(rounded.Camera, read.Camera);
        Assert.Equal(rounded.Program, read.Program);
        Assert.Equal(rounded.Section.Station, read.Section.Station);
        Assert.Equal(rounded.Section.Subject, read.Section.Subject);
        Assert.Equal(rounded.Section.ThicknessMm, read.Section.ThicknessMm);
        Assert.Equal(rounded.Section.Warnings, read.Section.Warnings);
        Assert.Equal(rounded.Settings.OrderBy(each => each.Key), read.Settings.OrderBy(each => each.Key));
        Assert.Equal(rounded.Section.ErrorSources.Count, read.Section.ErrorSources.Count);
        foreach (var (before, after) in rounded.Section.ErrorSources.Zip(read.Section.ErrorSources))
        {
            Assert.Equal((before.Name, before.IsAssumed), (after.Name, after.IsAssumed));
            Assert.Equal(before.Effects, after.Effects);
        }
    }

    [Fact]
    public void Any_outline_survives_writing_and_reading_at_a_tenth_of_a_micrometre() =>
        Gen.Select(Gen.Double[0.5, 500], Gen.Double[0.2, 1], Gen.Int[3, 80], Gen.Double[-360, 360]).Sample((radius, squash, count, degrees) =>
        {
            var outline = Outline.From(Enumerable.Range(0, count).Select(i =>
                new SectionPoint(radius * Math.Cos(2 * Math.PI * i / count), radius * squash * Math.Sin(2 * Math.PI * i / count)))).ValueOrThrow();
            var bare = SectionDocuments.Bare();
            var document = bare with
            {
                Section = bare.Section with { Outline = outline },
                Placement = new(new(radius, -radius), Angle.FromDegrees(degrees)),
            };

            var text = SectionDocumentFormat.Write(document);
            var read = SectionDocumentFormat.Read(text, "test").ValueOrThrow();

            Assert.Equal(text, SectionDocumentFormat.Write(read));
            Assert.Equal(document.Rounded().ValueOrThrow().Placement, read.Placement);
            Assert.Equal(count, read.Section.Outline.Count);
            const double HalfStepMm = 0.00005 + 1e-12; // half of the last digit kept, and the doubles' own step
            for (var i = 0; i < count; i++)
            {
                Assert.InRange(read.Section.Outline[i].XMm - outline[i].XMm, -HalfStepMm, HalfStepMm);
                Assert.InRange(read.Section.Outline[i].YMm - outline[i].YMm, -HalfStepMm, HalfStepMm);
            }
        }, iter: 200, seed: "0000OnXyZab1");

    [Fact]
    public void The_schema_comes_first_points_take_one_line_and_lines_end_in_a_line_feed()
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Full());

        Assert.StartsWith("{\n  \"schema\": \"sectionscan/section/1\",\n", text, StringComparison.Ordinal);
        Assert.EndsWith("}\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain('\r', text);
        // 20 cos 1°, 14 sin 1°; 20 cos 2°, 14 sin 2°.
        Assert.Contains("\n    [19.997, 0.2443],\n    [19.9878, 0.4886],\n", text, StringComparison.Ordinal);
        Assert.DoesNotContain("-0]", text, StringComparison.Ordinal);
        Assert.Contains("Höhe", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Measures_stand_beside_the_outline_in_the_published_form_and_are_not_needed_to_read_it()
    {
        var document = SectionDocuments.Full().Rounded().ValueOrThrow();
        var areaMm2 = PolygonMoments.Of(document.Section.Outline.Points).AreaMm2;
        var text = SectionDocumentFormat.Write(document, [
            new("area", new(areaMm2, 1.5), "mm²", new([new("edge", 1.2), new("print scale", 0.9)])),
            new("circularity", new(0.95, 0.001), "1")]);

        using var json = JsonDocument.Parse(text);
        var area = json.RootElement.GetProperty("measures").GetProperty("area");
        var row = json.RootElement.GetProperty("budget").GetProperty("area")[1];

        Assert.Equal(areaMm2, area.GetProperty("value").GetDouble());
        Assert.Equal(1.5, area.GetProperty("u").GetDouble());
        Assert.Equal(3.0, area.GetProperty("U").GetDouble());
        Assert.Equal("mm²", area.GetProperty("unit").GetString());
        Assert.Equal(("print scale", 0.9), (row.GetProperty("source").GetString(), row.GetProperty("u").GetDouble()));
        Assert.Equal(SectionDocumentFormat.Write(document), SectionDocumentFormat.Write(SectionDocumentFormat.Read(text, "test").ValueOrThrow()));
    }

    [Fact]
    public void An_outline_changed_under_its_measures_is_refused()
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Bare(), [new("area", new(900, 1), "mm²")]);

        var problem = ProblemOf(text);

        // Regular 12-gon squashed to 20 × 14: 12/2 · 20 · 14 · sin 30° = 840.
        Assert.Equal("section-document-contradicts-itself", problem.Code);
        Assert.Contains("900 mm²", problem.What, StringComparison.Ordinal);
        Assert.Contains("840", problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"sectionscan/section/1\"", "\"sectionscan/section/2\"", "section-document-later-version", "sectionscan/section/2")]
    [InlineData("\"sectionscan/section/1\"", "\"sectionscan/lens/1\"", "not-a-section-document", "sectionscan/lens/1")]
    [InlineData("\"schema\"", "\"scheme\"", "not-a-section-document", "schema")]
    [InlineData("\"station\"", "\"statio\"", "section-document-field-missing", "\"station\"")]
    [InlineData("\"errorSources\"", "\"sources\"", "section-document-field-missing", "\"errorSources\"")]
    [InlineData("\"k1\"", "\"k9\"", "section-document-field-missing", "\"camera.lens.k1\"")]
    [InlineData("\"offsetMm\": 0.015", "\"offset\": 0.015", "section-document-field-missing", "\"errorSources[1].effects[0].offsetMm\"")]
    [InlineData("\"offsetMm\": 0.015", "\"offsetMm\": \"wide\"", "section-document-field-unusable", "\"errorSources[1].effects[0].offsetMm\"")]
    [InlineData("\"normalOffset\"", "\"sideways\"", "section-document-field-unusable", "\"errorSources[1].effects[0].kind\"")]
    [InlineData("\"widthPx\": 4032", "\"widthPx\": 40.5", "section-document-field-unusable", "\"photo.widthPx\"")]
    [InlineData("\"file\": \"p01.jpg\"", "\"file\": null", "section-document-field-unusable", "\"photo")]
    [InlineData("\"mould\",", "\"cake\",", "section-document-field-unusable", "\"subject\"")]
    [InlineData("\"thicknessMm\": 10.05", "\"thicknessMm\": -1", "section-document-field-unusable", "\"thicknessMm\"")]
    [InlineData("\"thicknessMm\": 10.05", "\"thicknessMm\": 1e999", "section-document-field-unusable", "\"thicknessMm\"")]
    [InlineData("\"thicknessMm\": 10.05", "\"thicknessMm\": NaN", "section-document-not-json", "line 6")]
    [InlineData("[20, 0]", "[20, 0, 0]", "section-document-field-unusable", "\"outline[0]\"")]
    [InlineData("[20, 0]", "[20, \"0\"]", "section-document-field-unusable", "\"outline[0][1]\"")]
    [InlineData("[20, 0]", "[-25, 0]", "outline-crosses-itself", "")]
    [InlineData("\"program\": \"SectionScan 0.1.0\"", "\"program\": \"\\ud800\"", "section-document-field-unusable", "\"program\"")]
    [InlineData("\"program\":", "\"station\": 1, \"program\":", "section-document-not-json", "line")]
    public void A_damaged_document_gives_one_precise_problem(string original, string damaged, string code, string told)
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Full());
        Assert.Contains(original, text, StringComparison.Ordinal);

        var problem = ProblemOf(text.Replace(original, damaged, StringComparison.Ordinal));

        Assert.Equal(code, problem.Code);
        Assert.Contains(told, problem.What, StringComparison.Ordinal);
        Assert.Equal("damaged.json", problem.Where);
        Assert.NotEmpty(problem.Remedy);
    }

    [Fact]
    public void Every_truncation_is_a_problem_and_never_an_exception()
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Bare());

        for (var length = 0; length < text.TrimEnd().Length; length++)
        {
            Assert.Equal("section-document-not-json", ProblemOf(text[..length]).Code);
        }
    }

    [Fact]
    public void Bytes_changed_at_random_never_escape_as_an_exception()
    {
        var bytes = Encoding.UTF8.GetBytes(SectionDocumentFormat.Write(SectionDocuments.Full())).AsSpan(0, 2500).ToArray();
        var tail = Encoding.UTF8.GetBytes(SectionDocumentFormat.Write(SectionDocuments.Full())).AsSpan(2500).ToArray();
        var random = new Random(20250501);
        for (var round = 0; round < 500; round++)
        {
            var changed = (byte[])bytes.Clone();
            changed[random.Next(changed.Length)] = (byte)random.Next(256);
            using var stream = new MemoryStream([.. changed, .. tail]);

            var result = SectionDocumentFormat.Read(stream, "changed.json");

            Assert.True(result.TryGet(out _, out var problem) || problem.Remedy.Length > 0);
        }
    }

    [Fact]
    public void A_document_of_200_MB_is_refused_after_16_MB()
    {
        using var endless = new EndlessStream(200_000_000);

        var result = SectionDocumentFormat.Read(endless, "huge.json");

        Assert.False(result.TryGet(out _, out var problem));
        Assert.Equal("section-document-too-large", problem.Code);
        Assert.InRange(endless.GivenBytes, 16_000_000, 17_000_000);
    }

    [Fact]
    public void Nesting_a_thousand_deep_is_refused() =>
        Assert.Equal("section-document-not-json", ProblemOf("{\"schema\":" + new string('[', 1000) + new string(']', 1000) + "}").Code);

    [Fact]
    public void A_byte_order_mark_is_no_obstacle()
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Full());
        using var stream = new MemoryStream([.. Encoding.UTF8.Preamble, .. Encoding.UTF8.GetBytes(text)]);

        Assert.Equal(text, SectionDocumentFormat.Write(SectionDocumentFormat.Read(stream, "test").ValueOrThrow()));
    }

    [Fact]
    public void A_number_that_is_not_finite_is_never_written()
    {
        var bare = SectionDocuments.Bare();
        var broken = bare with { PlacedOutline = [new(double.NaN, 0)] };
        var brokenEffect = bare with { Section = bare.Section with { ErrorSources = [new("edge", [new NormalOffsetEffect(double.NaN)])] } };

        Assert.Throws<ArgumentException>(() => SectionDocumentFormat.Write(broken));
        Assert.Throws<ArgumentException>(() => SectionDocumentFormat.Write(brokenEffect));
    }

    private static Metrology.Results.Problem ProblemOf(string text)
    {
        Assert.False(SectionDocumentFormat.Read(text, "damaged.json").TryGet(out _, out var problem));
        return problem;
    }

    private sealed class EndlessStream(long lengthBytes) : MemoryStream
    {
        public long GivenBytes { get; private set; }

        public override int Read(Span<byte> buffer) => Fill(buffer);

        public override int Read(byte[] buffer, int offset, int count) => Fill(buffer.AsSpan(offset, count));

        private int Fill(Span<byte> buffer)
        {
            var count = (int)Math.Min(buffer.Length, lengthBytes - GivenBytes);
            buffer[..count].Fill((byte)' ');
            GivenBytes += count;
            return count;
        }
    }
}
