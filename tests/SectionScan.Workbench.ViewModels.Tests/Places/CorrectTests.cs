using SectionScan.Metrology.Measures;
using SectionScan.Workbench.ViewModels.Places;

namespace SectionScan.Workbench.ViewModels.Tests.Places;

public sealed class CorrectTests : IDisposable
{
    private readonly Shop shop = new();

    public void Dispose() => shop.Dispose();

    [Fact]
    public async Task Every_correction_is_made_where_the_photo_was_clicked_and_can_be_taken_back()
    {
        var window = shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        using var correct = new CorrectViewModel(window, digitise);

        // Upright on the phone: displayed and measured pixels differ.
        await Shop.TakeAsync(window, "p05");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        var first = digitise.Section!;
        var before = digitise.Measured(first)!.ValueOrThrow();
        var outline = digitise.Displayed(first);
        var rightmost = outline.MaxBy(p => p.X);

        correct.Pick(rightmost.X, rightmost.Y);
        Assert.Empty(correct.Picked);

        correct.TakeCommand.Execute(CorrectionTool.MovePoint);
        correct.Pick(rightmost.X, rightmost.Y);
        Assert.Single(correct.Picked);
        Assert.Contains("where the edge really is", correct.Instruction, StringComparison.Ordinal);
        correct.Pick(rightmost.X + 10, rightmost.Y);

        Assert.Null(correct.Problem);
        Assert.Empty(correct.Picked);
        var moved = digitise.Measured(digitise.Section!)!.ValueOrThrow();
        Assert.InRange(digitise.Displayed(digitise.Section!).Max(p => p.X) - rightmost.X, 9, 10.5);
        Assert.True(Area(moved).StandardUncertainty > Area(before).StandardUncertainty);
        Assert.Equal("move-point", Assert.Single(moved.Document.Corrections).Kind);

        correct.TakeCommand.Execute(CorrectionTool.ExcludeBubble);
        correct.Pick(rightmost.X + 10, rightmost.Y);
        correct.Pick(rightmost.X + 10, rightmost.Y + 60);
        Assert.Null(correct.Problem);
        Assert.InRange(digitise.Displayed(digitise.Section!).Max(p => p.X) - rightmost.X, -3, 3);

        correct.TakeCommand.Execute(CorrectionTool.RedrawStretch);
        Assert.False(correct.CanFinish);
        var (a, b) = (outline[100], outline[140]);
        correct.Pick(a.X, a.Y);
        correct.Pick(b.X, b.Y);
        Assert.True(correct.CanFinish);
        correct.FinishCommand.Execute(null);
        Assert.Null(correct.Problem);

        correct.ForgetCommand.Execute(null);
        correct.SetStation("12");
        correct.TurnUp(90);
        Assert.Equal(12, digitise.Section!.Station);
        Assert.Equal(5, digitise.Section.Corrections);
        var turned = digitise.Measured(digitise.Section)!.ValueOrThrow();
        Assert.InRange(turned.Measures[MeasureCatalogue.Width].Estimate.Value / before.Measures[MeasureCatalogue.Height].Estimate.Value, 0.98, 1.02);

        for (var i = 0; i < 5; i++)
        {
            window.UndoCommand.Execute(null);
        }

        Assert.Equal(first, digitise.Section);
        Assert.Equal(Area(before), Area(digitise.Measured(digitise.Section!)!.ValueOrThrow()));
        window.RedoCommand.Execute(null);
        Assert.Equal(1, digitise.Section!.Corrections);
    }

    [Fact]
    public async Task A_place_far_from_the_outline_is_refused_and_nothing_changes()
    {
        var window = shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        using var correct = new CorrectViewModel(window, digitise);
        await Shop.TakeAsync(window, "p01");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        var before = digitise.Section;

        correct.TakeCommand.Execute(CorrectionTool.MovePoint);
        correct.Pick(5, 5);
        correct.Pick(20, 20);

        Assert.Equal("correction-far-from-outline", correct.Problem!.Code);
        Assert.Equal(before, digitise.Section);
        foreach (var typed in new[] { "-4", "3.5", "three", "1000" })
        {
            correct.SetStation(typed);
            Assert.Equal("station-unlikely", correct.Problem!.Code);
            Assert.Contains($"\"{typed}\"", correct.Problem.What, StringComparison.Ordinal);
            Assert.Equal(before, digitise.Section);
        }

        correct.SetStation(" ");
        Assert.Null(digitise.Section!.Station);
    }

    [Fact]
    public async Task Places_picked_on_one_section_do_not_count_on_another()
    {
        var window = shop.WindowOnNewJob();
        using var digitise = new DigitiseViewModel(window);
        using var correct = new CorrectViewModel(window, digitise);
        await Shop.TakeAsync(window, "p01");
        await digitise.DigitiseWaitingCommand.ExecuteAsync(null);
        correct.TakeCommand.Execute(CorrectionTool.MovePoint);
        correct.Pick(5, 5);

        digitise.ChosenSection = digitise.Sections[1].Id;

        Assert.Empty(correct.Picked);
        Assert.Equal(CorrectionTool.MovePoint, correct.Tool);
        var place = digitise.Displayed(digitise.Section!)[10];
        correct.Pick(place.X, place.Y);
        correct.Pick(place.X + 2, place.Y);
        Assert.Null(correct.Problem);
        Assert.Equal(1, digitise.Section!.Corrections);
    }

    private static Metrology.Quantities.Estimate Area(ViewModels.Desk.MeasuredSection section) => section.Measures[MeasureCatalogue.Area].Estimate;
}
