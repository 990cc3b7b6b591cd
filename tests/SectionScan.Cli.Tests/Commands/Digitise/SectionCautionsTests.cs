using System.Text.Json;
using SectionScan.Metrology.Outlines;
using SectionScan.Testing.Truth;

namespace SectionScan.Cli.Tests.Commands.Digitise;

/// <summary>p09: half a mould, beside which no station tag lies.</summary>
public sealed class SectionCautionsTests
{
    [Fact]
    public async Task A_slice_without_a_tag_is_told_by_its_number_and_place_and_its_caution_has_a_code()
    {
        var run = await CommandLine.RunAsync("digitise", SamplePhotos.PhotoPath("p09"), "--thickness", "14", "--json");

        using var answer = JsonDocument.Parse(run.Output);
        var section = Assert.Single(answer.RootElement.GetProperty("results")[0].GetProperty("sections").EnumerateArray());
        var caution = section.GetProperty("cautions").EnumerateArray().First(each => each.GetProperty("code").GetString() == "no-station-tag");
        Assert.Contains("No station tag lies beside the slice", caution.GetProperty("message").GetString(), StringComparison.Ordinal);
        Assert.Contains("Lay the tag", caution.GetProperty("remedy").GetString(), StringComparison.Ordinal);

        // Its middle as the truth of the photo has it, to a millimetre.
        var truth = Assert.Single(SamplePhotos.TruthOf("p09").Sections);
        var centroid = truth.Placement.ToTarget(PolygonMoments.Of(truth.Outline).Centroid);
        Assert.Contains(FormattableString.Invariant($"p09.jpg, slice 1 near ({centroid.XMm:0}, {centroid.YMm:0}) mm"), run.Error, StringComparison.Ordinal);
    }
}
