using Bunit;
using SectionScan.Workbench.Parts;

namespace SectionScan.Workbench.Tests.Parts;

public sealed class SliderTests : BunitContext
{
    [Fact]
    public void It_tells_each_step_while_it_moves_and_the_last_one_when_it_is_let_go()
    {
        var (tried, kept) = (new List<double>(), new List<double>());
        var slider = Render<Slider>(parameters => parameters
            .Add(each => each.Label, "Roof").Add(each => each.Text, "40 %").Add(each => each.Value, 40)
            .Add(each => each.Tried, tried.Add).Add(each => each.Kept, kept.Add));

        slider.Find("input").Input("45");
        slider.Find("input").Input("50.5");
        slider.Find("input").Change("50.5");

        Assert.Equal([45, 50.5], tried);
        Assert.Equal([50.5], kept);
    }

    [Fact]
    public void Its_value_is_said_in_words_and_written_without_the_machine_s_own_comma()
    {
        var slider = Render<Slider>(parameters => parameters
            .Add(each => each.Label, "Fair out").Add(each => each.Text, "2.5 mm").Add(each => each.Value, 2.5).Add(each => each.Step, 0.1).Add(each => each.Most, 5));

        var input = slider.Find("input");

        Assert.Equal(("2.5", "0.1", "5", "2.5 mm"), (input.GetAttribute("value"), input.GetAttribute("step"), input.GetAttribute("max"), input.GetAttribute("aria-valuetext")));
        Assert.Contains("Fair out", slider.Find("label").TextContent, StringComparison.Ordinal);
    }
}
