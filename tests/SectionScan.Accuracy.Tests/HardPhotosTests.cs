using SectionScan.Testing.Accuracy;
using SectionScan.Testing.Rendering;
using Xunit.Abstractions;

namespace SectionScan.Accuracy.Tests;

public sealed class HardPhotosTests(ITestOutputHelper output)
{
    // Two scenes of each family keep the run short; the report command draws as many as asked for.
    private static readonly int[] Scenes = [1, 2];

    [Fact]
    public void A_good_photo_is_measured() => Measure(HardCase.Plain);

    [Fact]
    public void Grey_plaster_is_measured() => Measure(HardCase.GreyPlaster);

    [Fact]
    public void Black_rubber_is_measured() => Measure(HardCase.BlackRubber);

    [Fact]
    public void Pink_silicone_is_measured() => Measure(HardCase.PinkSilicone);

    [Fact]
    public void Near_white_silicone_is_measured() => Measure(HardCase.NearWhiteSilicone);

    [Fact]
    public void A_slice_whose_walls_lean_inward_is_measured() => Measure(HardCase.WallsLeanInward);

    [Fact]
    public void A_slice_whose_walls_lean_outward_is_measured() => Measure(HardCase.WallsLeanOutward);

    [Fact]
    public void A_thick_slice_far_from_the_axis_is_measured() => Measure(HardCase.ThickFarFromAxis);

    [Fact]
    public void A_photo_under_a_near_lamp_is_measured() => Measure(HardCase.StrongGradient);

    [Fact]
    public void A_photo_with_hard_shadows_is_measured() => Measure(HardCase.HardShadow);

    [Fact]
    public void A_photo_with_soft_shadows_is_measured() => Measure(HardCase.SoftShadow);

    [Fact]
    public void A_photo_with_glare_is_measured() => Measure(HardCase.Glare);

    [Fact]
    public void A_blurred_photo_is_measured() => Measure(HardCase.Blur);

    [Fact]
    public void A_noisy_photo_is_measured() => Measure(HardCase.Noise);

    [Fact]
    public void A_photo_with_a_covered_corner_is_measured() => Measure(HardCase.CoveredCorner);

    [Fact]
    public void A_photo_of_24_megapixels_is_measured() => Measure(HardCase.TwentyFourMegapixels);

    [Fact]
    public void A_print_of_another_size_is_measured() => Measure(HardCase.PrintRatio);

    [Fact]
    public void A_turned_slice_is_measured() => Measure(HardCase.TurnedSlices);

    [Fact]
    public void A_slice_with_bubbles_and_burrs_is_measured() => Measure(HardCase.BubblesAndBurrs);

    [Fact]
    public void An_opening_with_a_lit_wall_is_measured() => Measure(HardCase.LitOpening);

    [Fact]
    public void An_opening_beside_a_card_askew_is_measured() => Measure(HardCase.CardAskew);

    private void Measure(HardCase family)
    {
        using var scenes = new RenderedScenes();
        PhotoVerdict[] verdicts =
        [
            .. Scenes.Select(number => SceneSampler.SceneFor(family, number))
                .SelectMany(scene => new[] { true, false }.Select(hasProfile => Named(scenes.Judge(scene, hasProfile), hasProfile))),
        ];
        output.WriteLine(AccuracyTable.Sections(verdicts));
        output.WriteLine(AccuracyTable.Summary(family.ToString(), verdicts));

        Assert.Empty(verdicts.SelectMany(AccuracyLimits.Usable.Broken));
    }

    private static PhotoVerdict Named(PhotoVerdict verdict, bool hasProfile) =>
        verdict with { Name = verdict.Name + (hasProfile ? ", profile" : ", no profile") };
}
