using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using SectionScan.Workbench.Parts;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Tests.Parts;

public sealed class NumberFieldTests : BunitContext
{
    private readonly string folder = Directory.CreateTempSubdirectory("sectionscan-field-").FullName;
    private readonly UnitChoice units;
    private readonly List<double?> told = [];
    private double? kept = 6;

    public NumberFieldTests()
    {
        units = new(folder);
        Services.AddSingleton(units);
    }

    [Fact]
    public void What_is_no_number_stays_in_the_field_with_what_is_wrong_and_changes_nothing()
    {
        var field = Show();

        field.Find("input").Change("6,5");

        Assert.Empty(told);
        Assert.Equal("6,5", field.Find("input").GetAttribute("value"));
        Assert.Equal("true", field.Find("input").GetAttribute("aria-invalid"));
        var wrong = field.Find("[role=alert]");
        Assert.Equal(wrong.Id, field.Find("input").GetAttribute("aria-describedby"));
        Assert.Contains("\"6,5\" is not a number", wrong.TextContent, StringComparison.Ordinal);

        field.Find("input").Change("6.5");
        Assert.Equal([6.5], told);
        Assert.Empty(field.FindAll("[role=alert]"));
    }

    [Fact]
    public void Emptying_it_is_told_as_none()
    {
        var field = Show();

        field.Find("input").Change("");

        Assert.Equal([null], told);
        Assert.Empty(field.FindAll("[role=alert]"));
    }

    [Fact]
    public void A_number_that_is_not_taken_stays_with_what_holds_instead()
    {
        var field = Show(take: _ => { });

        field.Find("input").Change("600");

        Assert.Equal([600], told);
        Assert.Equal("600", field.Find("input").GetAttribute("value"));
        Assert.Equal("Not taken: 6 mm still holds.", field.Find("[role=alert]").TextContent);
    }

    [Fact]
    public async Task It_shows_and_takes_inches_when_the_window_does()
    {
        kept = 50.8;
        var field = Show();
        Assert.Contains("Width, mm", field.Find("label").TextContent, StringComparison.Ordinal);

        await field.InvokeAsync(() => units.Set(true));
        Assert.Contains("Width, in", field.Find("label").TextContent, StringComparison.Ordinal);
        Assert.Equal("2", field.Find("input").GetAttribute("value"));

        field.Find("input").Change("1");
        Assert.Equal([25.4], told);
    }

    [Fact]
    public void In_a_form_what_cannot_be_read_is_told_too_so_that_the_form_is_not_sent_with_what_stood_there()
    {
        var field = Show(isOfForm: true);

        field.Find("input").Change("wide");

        Assert.True(double.IsNaN(Assert.Single(told)!.Value));
        Assert.Equal("wide", field.Find("input").GetAttribute("value"));
    }

    [Fact]
    public void A_count_is_whole()
    {
        var field = Show(isWhole: true);

        field.Find("input").Change("2.5");

        Assert.Empty(told);
        Assert.Contains("no whole number", field.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    protected override void Dispose(bool disposing)
    {
        base.Dispose(disposing);
        Directory.Delete(folder, recursive: true);
    }

    /// <summary>The field within a page that keeps what it is told.</summary>
    private IRenderedComponent<NumberField> Show(Action<double?>? take = null, bool isOfForm = false, bool isWhole = false)
    {
        take ??= value => kept = value;
        IRenderedComponent<NumberField> field = null!;
        field = Render<NumberField>(parameters => parameters
            .Add(each => each.Label, "Width").Add(each => each.Value, kept).Add(each => each.IsOfForm, isOfForm).Add(each => each.IsWhole, isWhole)
            .Add(each => each.Changed, EventCallback.Factory.Create<double?>(this, value =>
            {
                told.Add(value);
                take(value);
                field.Render(again => again.Add(each => each.Value, kept));
            })));
        return field;
    }
}
