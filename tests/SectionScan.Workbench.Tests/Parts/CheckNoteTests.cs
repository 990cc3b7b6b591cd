using Bunit;
using Microsoft.Extensions.DependencyInjection;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Checking;
using SectionScan.Metrology.Results;
using SectionScan.Testing.Truth;
using SectionScan.Workbench.Parts;
using SectionScan.Workbench.ViewModels.Desk;

namespace SectionScan.Workbench.Tests.Parts;

public sealed class CheckNoteTests : BunitContext
{
    public CheckNoteTests() => Services.AddSingleton(new UnitChoice(Path.Combine(Path.GetTempPath(), "sectionscan-no-such-folder")));

    [Fact]
    public void It_says_that_it_looks_while_nothing_is_known() =>
        Assert.Equal("Looking at it …", Show(null).Find("[role=status]").TextContent);

    [Fact]
    public void A_good_photo_is_called_good_by_a_sign_and_a_word()
    {
        var note = Show(CheckPhotos.Run([SamplePhotos.PhotoPath("p01")], new DigitiseSettings { ThicknessMm = 6 })[0]);

        Assert.Equal("✓ Good photo.", note.Find(".verdict").TextContent.Trim());
        Assert.NotEmpty(note.FindAll("tbody tr"));
    }

    [Fact]
    public void What_is_wrong_comes_with_its_remedy()
    {
        var note = Show(new("p01.jpg", null, new Problem("too-blurred", "It is blurred.", "p01.jpg", "Take it again.")));

        Assert.Contains("It is blurred.", note.Find("[role=alert]").TextContent, StringComparison.Ordinal);
        Assert.Contains("Take it again.", note.Find("[role=alert]").TextContent, StringComparison.Ordinal);
    }

    private IRenderedComponent<CheckNote> Show(CheckOutcome? outcome) => Render<CheckNote>(parameters => parameters.Add(each => each.Outcome, outcome));
}
