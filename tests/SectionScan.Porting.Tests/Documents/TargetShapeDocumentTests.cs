using SectionScan.Metrology.Frames;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Porting.Tests.Documents;

public class TargetShapeDocumentTests
{
    [Fact]
    public void A_target_shape_comes_back_with_its_shares_limits_notes_and_marks()
    {
        var written = SectionDocuments.Target();

        var read = SectionDocumentFormat.Read(SectionDocumentFormat.Write(written), "test").ValueOrThrow();

        Assert.Equal(SectionSubject.Target, read.Section.Subject);
        Assert.Equal(written.TargetShape!.Own, read.TargetShape!.Own);
        Assert.Equal(written.TargetShape.Reference, read.TargetShape.Reference);
        Assert.Equal(written.TargetShape.Motion, read.TargetShape.Motion);
        Assert.Equal(written.TargetShape.Steps, read.TargetShape.Steps);
        Assert.Equal(written.TargetShape.Shares, read.TargetShape.Shares);
        Assert.Equal([true, false], read.TargetShape.Limits.Select(limit => limit.IsActive));
        Assert.Equal("wider meant relocating the oil drain", read.TargetShape.Limits[0].Note);
        Assert.Equal(written.TargetShape.Limits[0].Stretches, read.TargetShape.Limits[0].Stretches);
        Assert.Equal(new SectionLine(new(1.5, -3), new(1.25, 12)), read.Marks.GuideAxis);
        Assert.Equal(written.Marks.FloorLine, read.Marks.FloorLine);
        Assert.Equal(new SectionPoint(-20, 0.5), read.Marks.Points["parting line"]);
    }

    [Fact]
    public void A_document_without_marks_or_target_does_not_mention_them()
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Full());

        Assert.DoesNotContain("marks", text, StringComparison.Ordinal);
        Assert.DoesNotContain("targetShape", text, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("[1.25, 12]", "[1.5, -3]", "marks.guideAxis")]
    [InlineData("[1.25, 12]", "\"up\"", "marks.guideAxis[1]")]
    [InlineData("\"share\": 0.6", "\"share\": \"much\"", "targetShape")]
    [InlineData("\"note\": \"wider meant relocating the oil drain\",", "", "targetShape")]
    public void Marks_or_facts_that_are_damaged_are_refused_by_name(string good, string damaged, string field)
    {
        var text = SectionDocumentFormat.Write(SectionDocuments.Target()).Replace("\"share\":0.6", "\"share\": 0.6", StringComparison.Ordinal);
        Assert.Contains(good, text, StringComparison.Ordinal);

        var read = SectionDocumentFormat.Read(text.Replace(good, damaged, StringComparison.Ordinal), "test");

        Assert.False(read.TryGet(out _, out var problem));
        Assert.Equal("section-document-field-unusable", problem.Code);
        Assert.Contains(field, problem.ToString(), StringComparison.Ordinal);
    }
}
