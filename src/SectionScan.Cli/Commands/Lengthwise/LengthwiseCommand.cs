using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Lengthwise;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.Profiles;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Lengthwise;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Lengthwise;

/// <summary>Reads a port cut lengthwise.</summary>
internal sealed class LengthwiseCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<LengthwiseSettings>
{
    public override int Execute(CommandContext context, LengthwiseSettings settings, CancellationToken cancellationToken)
    {
        LensProfile? lens = null;
        if (settings.Lens is not null && !LensFiles.Read(settings.Lens).TryGet(out lens, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var unit = settings.Units.OfLength;
        var how = new DigitiseSettings
        {
            ThicknessMm = settings.Thickness,
            Lens = lens,
            PrintRatio = settings.PrintRatio is { } ratio ? (ratio.X, ratio.Y) : null,
            Up = settings.Up is { } up ? Angle.FromDegrees(up) : null,
        };
        var order = new LengthwiseOrder(
            settings.Shape, settings.Reference, settings.Alignment, settings.Face == "right", how, settings.Out, PaperSize.FromName(settings.Paper)!, unit);
        if (!ReadLengthwise.Run(order).TryGet(out var outcome, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        foreach (var warning in outcome.Warnings)
        {
            problems.PrintWarning(new Problem("warning", warning, settings.Shape, "Look at the drawing before you trust the numbers."));
        }

        if (settings.IsJson)
        {
            json.Write(LengthwiseAnswer.Of(outcome));
            return ExitCode.Done;
        }

        Show(outcome.Shape, unit);
        if (outcome.Comparison is { } comparison)
        {
            Show(comparison, unit);
        }

        foreach (var file in outcome.Files)
        {
            terminal.Answers.WriteLine(file);
        }

        return ExitCode.Done;
    }

    private void Show(LengthwiseShape shape, LengthUnit unit)
    {
        var u = new LengthwiseUncertainty(shape);
        var least = shape.Centreline.MinBy(place => place.HeightMm)!;
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        figures.AddRow("centreline, face to seat", MeasureText.Length(new(shape.LengthMm, 0), unit));
        figures.AddRow("height at the face", MeasureText.Length(u.Height(shape.Face), unit));
        figures.AddRow("height at the seat", MeasureText.Length(u.Height(shape.Seat), unit));
        figures.AddRow("least height", $"{MeasureText.Length(u.Height(least), unit)}, {MeasureText.Length(new(least.DistanceMm, 0), unit)} from the face");
        figures.AddRow("radius of the floor's turn", Radius(shape.FloorRadius, unit));
        figures.AddRow("tightest place of the floor", Tightest(shape.FloorRadii, unit));
        figures.AddRow("radius of the roof's turn", Radius(shape.RoofRadius, unit));
        figures.AddRow("tightest place of the roof", Tightest(shape.RoofRadii, unit));
        terminal.WriteTable(figures);
    }

    private void Show(LengthwiseComparison comparison, LengthUnit unit)
    {
        terminal.Answers.WriteLine($"{comparison.Measured.Name} on {comparison.Reference.Name}: + metal already gone, − metal left");
        var figures = new Table().Border(TableBorder.Simple).HideHeaders().AddColumn("figure").AddColumn("value");
        figures.AddRow("the floor rises, mean", MeasureText.Deviation(comparison.MeanFloorRiseMm, unit));
        figures.AddRow("most", $"{MeasureText.Deviation(-comparison.HighestFloor.DeviationMm, unit)}{U(comparison, comparison.HighestFloor, unit)}, {MeasureText.Length(new(comparison.HighestFloor.LengthMm, 0), unit)} along the floor");
        figures.AddRow("least", $"{MeasureText.Deviation(-comparison.DeepestFloor.DeviationMm, unit)}{U(comparison, comparison.DeepestFloor, unit)}, {MeasureText.Length(new(comparison.DeepestFloor.LengthMm, 0), unit)} along the floor");
        figures.AddRow("roof, deviation", $"{MeasureText.Deviation(comparison.Roof.Min(s => s.DeviationMm), unit)} to {MeasureText.Deviation(comparison.Roof.Max(s => s.DeviationMm), unit)}");
        figures.AddRow("U of a deviation (k = 2)", comparison.Uncertainty is null
            ? "not known" : MeasureText.Length(new(Estimate.CoverageFactor * comparison.UsualStandardUncertaintyMm, 0), unit) + " where the edge is as sure as usual");
        terminal.WriteTable(figures);
    }

    private static string U(LengthwiseComparison comparison, ProfileSample place, LengthUnit unit) => comparison.Uncertainty is null
        ? string.Empty : $" ± {MeasureText.Length(new(Estimate.CoverageFactor * comparison.FloorStandardUncertaintyMm(place), 0), unit)}";

    private static string Radius(Result<ArcRadius> found, LengthUnit unit) => found.TryGet(out var radius, out var problem)
        ? MeasureText.Length(radius.RadiusMm, unit)
            + string.Create(CultureInfo.InvariantCulture, $" over {Math.Abs(radius.Arc.Degrees):0}°, strays {MeasureText.Length(new(radius.ResidualRmsMm, 0), unit)} from the circle")
        : problem.What;

    private static string Tightest(IReadOnlyList<LocalRadius> radii, LengthUnit unit)
    {
        var stretch = unit == LengthUnit.Inch ? "0.394 in" : "10 mm";
        return radii.Where(local => local.Radius.Arc.Radians > 0).MinBy(local => local.Radius.RadiusMm.Value) is { } tightest
            ? $"{MeasureText.Length(tightest.Radius.RadiusMm, unit)} over {stretch} of wall"
            : $"nowhere round over {stretch} of wall";
    }
}
