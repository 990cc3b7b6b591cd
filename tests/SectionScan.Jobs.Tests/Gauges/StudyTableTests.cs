using SectionScan.Jobs.Gauges;
using SectionScan.Metrology.GaugeStudies;

namespace SectionScan.Jobs.Tests.Gauges;

public sealed class StudyTableTests
{
    private const string Head = "photo,plug,shape,width_mm,height_mm,thickness_mm,u_mm,person,camera,sheet\n";

    private static readonly string Path = System.IO.Path.Combine(System.IO.Path.GetTempPath(), "study", "study.csv");

    [Fact]
    public void A_line_names_photo_plug_and_who_took_it()
    {
        var row = Assert.Single(StudyTable.Read(Head + "# two months old\na.jpg,slot,stadium,24,36,6,0.002,Ann,phone,A\n", Path).ValueOrThrow());

        Assert.Equal(new Plug("slot", PlugShape.Stadium, 36, 24, 0.002), row.Plug);
        Assert.Equal((6.0, "Ann", "phone", "A"), (row.ThicknessMm, row.Person, row.Camera, row.Sheet));
        Assert.Equal("a.jpg", System.IO.Path.GetFileName(row.Photo));
    }

    [Fact]
    public void Columns_may_come_in_any_order_with_semicolons_and_decimal_commas_and_without_the_optional_ones()
    {
        var row = Assert.Single(StudyTable.Read("\ufeffplug;photo;thickness_mm;width_mm;shape\r\nd20;a.jpg;6,5;20,01;circle\r\n", Path).ValueOrThrow());

        Assert.Equal((20.01, 20.01, 6.5), (row.Plug.WidthMm, row.Plug.HeightMm, row.ThicknessMm));
        // A calliper's ±0.02 mm, rectangular: 0.02/√3 (JCGM 100:2008, 4.3.7).
        Assert.Equal(0.02 / Math.Sqrt(3), row.Plug.StandardUncertaintyMm, 1e-8);
        Assert.Equal("-", row.Person);
    }

    [Theory]
    [InlineData("a.jpg,d,star,20,,6,,A,,", "shape star")]
    [InlineData("a.jpg,d,1,20,,6,,A,,", "shape 1")]
    [InlineData("a.jpg,d,circle,0,,6,,A,,", "width_mm must lie above 0")]
    [InlineData("a.jpg,d,circle,20,21,6,,A,,", "one size")]
    [InlineData("a.jpg,d,stadium,20,,6,,A,,", "width_mm and height_mm")]
    [InlineData("a.jpg,d,circle,20,,NaN,,A,,", "thickness_mm must lie from 0")]
    [InlineData("a.jpg,d,circle,20,,6,2,A,,", "u_mm from 0 to 1")]
    [InlineData("a.jpg,d,circle,20,,6", "6 columns")]
    [InlineData(",d,circle,20,,6,,A,,", "must be named")]
    [InlineData("../a.jpg,d,circle,20,,6,,A,,", "outside the table's folder")]
    [InlineData("/etc/a.jpg,d,circle,20,,6,,A,,", "outside the table's folder")]
    [InlineData("b.jpg,d,circle,20,,6,,A,,\nb.jpg,d,circle,20,,6,,A,,", "named twice")]
    [InlineData("b.jpg,d,circle,20,,6,,A,,\na.jpg,d,circle,21,,6,,A,,", "another shape or size")]
    public void A_line_that_cannot_be_used_is_named(string lines, string reason)
    {
        Assert.False(StudyTable.Read(Head + lines, Path).TryGet(out _, out var problem));

        Assert.Equal("study-bad-line", problem.Code);
        Assert.Contains(reason, problem.What, StringComparison.Ordinal);
        Assert.Contains("Line ", problem.What, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("", "study-no-head")]
    [InlineData("photo,plug\n", "study-no-head")]
    [InlineData(Head, "study-no-head")]
    [InlineData("photo,plug,shape,width_mm,thickness_mm,diameter\n", "study-unknown-column")]
    public void A_table_without_its_head_is_refused(string text, string code)
    {
        Assert.False(StudyTable.Read(text, Path).TryGet(out _, out var problem));
        Assert.Equal(code, problem.Code);
    }
}
