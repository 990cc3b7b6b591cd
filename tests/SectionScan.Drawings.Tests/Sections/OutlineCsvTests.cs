using System.Text;
using CsCheck;
using SectionScan.Drawings.Sections;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;

namespace SectionScan.Drawings.Tests.Sections;

public sealed class OutlineCsvTests
{
    // Written to six decimals.
    private const double RoundingMm = 5.1e-7;

    [Fact]
    public void A_square_is_written_corner_by_corner()
    {
        var square = Outline.From([new(-1.5, -1), new(1.5, -1), new(1.5, 1), new(-1.5, 1)]).ValueOrThrow();

        Assert.Equal("x_mm,y_mm\n-1.5,-1\n1.5,-1\n1.5,1\n-1.5,1\n", Written(square));
    }

    [Fact]
    public void What_is_written_is_read_back()
        => Gen.Select(Gen.Double[5, 40], Gen.Double[0, 4], Gen.Int[3, 200]).Sample((radius, wave, count) =>
        {
            var outline = Outline.From(Enumerable.Range(0, count).Select(i =>
            {
                var (sin, cos) = Math.SinCos(2 * Math.PI * i / count);
                var r = radius + (wave * cos);
                return new SectionPoint(r * cos, r * sin);
            })).ValueOrThrow();

            var back = OutlineCsv.Read(new StringReader(Written(outline)), "a.csv").ValueOrThrow();

            Assert.Equal(outline.Count, back.Count);
            for (var i = 0; i < outline.Count; i++)
            {
                Assert.Equal(outline[i].XMm, back[i].XMm, RoundingMm);
                Assert.Equal(outline[i].YMm, back[i].YMm, RoundingMm);
            }
        });

    [Theory]
    [InlineData("x_mm,y_mm\n0,0\n25.4,0\n25.4,12.7\n")]
    [InlineData("\ufeffx_mm,y_mm\r\n0,0\r\n\r\n25.4,0\r\n25.4,12.7\r\n")]
    [InlineData("X_mm; Y_mm\n0;0\n25,4;0\n25,4;12,7\n")]
    [InlineData("x_mm\ty_mm\n0\t0\n25.4\t0\n25.4\t12.7\n")]
    [InlineData("x_in,y_in\n0,0\n1,0\n1,0.5\n")]
    public void Tables_as_spreadsheets_write_them_are_read(string text)
    {
        var outline = OutlineCsv.Read(new StringReader(text), "a.csv").ValueOrThrow();

        Assert.Equal([new(0, 0), new(25.4, 0), new(25.4, 12.7)], outline.Points.ToArray());
    }

    [Theory]
    [InlineData("", "csv-no-head")]
    [InlineData("0,0\n1,0\n1,1\n", "csv-no-head")]
    [InlineData("x_mm,y_mm\n0,0\n1,zero\n1,1\n", "csv-bad-line")]
    [InlineData("x_mm,y_mm\n0,0\n1,0,7\n1,1\n", "csv-bad-line")]
    [InlineData("x_mm,y_mm\n0,0\n1,0\n", "outline-too-small")]
    [InlineData("x_mm,y_mm\n0,0\nNaN,0\n1,1\n", "outline-not-finite")]
    [InlineData("x_mm,y_mm\n0,0\n2,2\n2,0\n0,1\n", "outline-crosses-itself")]
    public void What_is_no_outline_is_refused_with_a_reason(string text, string code)
    {
        Assert.False(OutlineCsv.Read(new StringReader(text), "a.csv").TryGet(out _, out var problem));
        Assert.Equal(code, problem.Code);
        Assert.Equal("a.csv", problem.Where);
    }

    [Fact]
    public void A_table_without_end_is_refused()
    {
        var text = new StringBuilder("x_mm,y_mm\n");
        for (var i = 0; i <= OutlineCsv.MaxPoints; i++)
        {
            text.Append("1,2\n");
        }

        Assert.False(OutlineCsv.Read(new StringReader(text.ToString()), "a.csv").TryGet(out _, out var problem));
        Assert.Equal("csv-too-long", problem.Code);
    }

    [Fact]
    public void A_bad_line_is_named_by_its_number()
    {
        Assert.False(OutlineCsv.Read(new StringReader("x_mm,y_mm\n0,0\n\n1\n"), "a.csv").TryGet(out _, out var problem));
        Assert.Equal("a.csv: Line 4 is not two numbers. Give x and y on each line, parted as in the first line.", problem.ToString());
    }

    private static string Written(Outline outline)
    {
        using var stream = new MemoryStream();
        OutlineCsv.Write(outline, stream);
        return Encoding.UTF8.GetString(stream.ToArray());
    }
}
