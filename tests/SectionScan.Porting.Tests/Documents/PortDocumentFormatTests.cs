using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Tests.Documents;

public sealed class PortDocumentFormatTests
{
    [Fact]
    public void What_is_written_is_read_back_and_writes_the_same_bytes()
    {
        var text = PortDocumentFormat.Write(Document());

        var read = PortDocumentFormat.Read(text, "a.port.json").ValueOrThrow();

        Assert.Equal(text, PortDocumentFormat.Write(read));
        Assert.Equal("intake 1", read.Port.Name);
        Assert.Equal(4, read.Port.BowlFromStation);
        Assert.Equal([3, 4], read.Port.Stations.Select(s => s.Position.Station));
        Assert.Equal(12, read.Port.Stations[1].Position.Turn.Degrees, 9);
        Assert.Equal(Document().Sections[0].Section.Outline.Count, read.Sections[0].Section.Outline.Count);
    }

    [Theory]
    [InlineData("{}", "not-a-port-document", "does not name its schema")]
    [InlineData("[]", "not-a-port-document", "does not name its schema")]
    [InlineData("{\"schema\": \"sectionscan/section/1\"}", "not-a-port-document", "sectionscan/section/1")]
    [InlineData("{\"schema\": \"sectionscan/port/1\"}", "section-document-field-missing", "\"name\" is missing")]
    [InlineData("{\"schema\": ", "section-document-not-json", "breaks off")]
    public void What_is_no_port_document_says_why(string text, string code, string words)
    {
        PortDocumentFormat.Read(text, "a.port.json").TryGet(out _, out var problem);

        Assert.Equal(code, problem?.Code);
        Assert.Contains(words, problem!.What, StringComparison.Ordinal);
    }

    [Fact]
    public void A_station_edited_out_of_order_is_refused()
    {
        var text = PortDocumentFormat.Write(Document()).Replace("\"distanceMm\": 25", "\"distanceMm\": -5", StringComparison.Ordinal);

        PortDocumentFormat.Read(text, "a.port.json").TryGet(out _, out var problem);

        Assert.Equal("stations-out-of-order", problem?.Code);
    }

    private static PortDocument Document()
    {
        var full = SectionDocuments.Full();
        var table = StationTable.From([new(3, 0), new(4, 25) { Turn = Angle.FromDegrees(12) }], "t").ValueOrThrow();
        var document = PortDocument.From(
            "intake 1", PortKind.Intake, [full with { Section = full.Section with { Station = 4 } }, full], table, "SectionScan 0.1.0").ValueOrThrow();
        return document with { Port = document.Port with { BowlFromStation = 4 } };
    }
}
