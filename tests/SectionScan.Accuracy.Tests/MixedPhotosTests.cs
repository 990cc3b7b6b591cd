using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;

namespace SectionScan.Accuracy.Tests;

/// <summary>Rendered photos with several hard things at once, each for one thing that must not go wrong.</summary>
public sealed class MixedPhotosTests : IDisposable
{
    private readonly RenderedScenes scenes = new();

    public void Dispose() => scenes.Dispose();

    // Near-white plaster on white paper, lit so that one side has no shadow: an outline that cuts across the face must not be believed.
    [Fact]
    public void An_outline_beyond_which_the_face_goes_on_is_refused()
    {
        var verdict = scenes.Judge(SceneSampler.Sample(91).Resized(0.5), hasProfile: true);

        Assert.Contains(verdict.Missed, section => section.Station == 14);
        Assert.Contains(verdict.Photo!.Refused, problem => problem.Code == "edge-unclear");
    }

    [Fact]
    public void A_tag_in_the_shadow_of_a_black_slice_is_read() =>
        Assert.True(scenes.Judge(SceneSampler.Sample(1), hasProfile: true).IsComplete);
}
