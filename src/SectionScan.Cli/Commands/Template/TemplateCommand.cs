using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Drawings.Templates;
using SectionScan.Jobs.Templates;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Cutting;
using SectionScan.Porting.Templates;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Template;

/// <summary>Writes templates at actual size.</summary>
internal sealed class TemplateCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<TemplateSettings>
{
    public override int Execute(CommandContext context, TemplateSettings settings, CancellationToken cancellationToken)
    {
        var unit = settings.Units.OfLength;
        var order = new TemplateOrder(
            settings.Sections,
            settings.Kind switch { "inside" => [TemplateKind.Inside], "outside" => [TemplateKind.Outside], _ => [TemplateKind.Inside, TemplateKind.Outside] },
            settings.Stage switch { "rough" => [TemplateStage.Rough], "finish" => [TemplateStage.Finish], _ => [TemplateStage.Rough, TemplateStage.Finish] },
            settings.Port.Trim(),
            settings.AllowanceMm,
            settings.ClearanceMm,
            settings.LineWidthMm,
            settings.KerfMm,
            settings.StemMm > 0 ? PlugHold.Stem(settings.StemMm) : PlugHold.Handle(settings.SheetMm),
            PaperSize.FromName(settings.Paper)!,
            new PrintCorrection(settings.PrintRatio.X, settings.PrintRatio.Y),
            unit);
        if (!TemplateFiles.Write(order, LibraryOption.PathOf(settings.Library), settings.Out, TimeProvider.System).TryGet(out var answer, out var problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(answer);
            return ExitCode.Done;
        }

        Show(answer, unit);
        return ExitCode.Done;
    }

    private void Show(TemplateAnswer answer, LengthUnit unit)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn("section").AddColumn("template").AddColumn("stage");
        foreach (var heading in new[] { "width", "height", "area" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var made in answer.Templates)
        {
            table.AddRow(
                Markup.Escape(made.Section), made.Kind, made.Stage, MeasureText.Length(new(made.WidthMm, 0), unit),
                MeasureText.Length(new(made.HeightMm, 0), unit), MeasureText.Area(new Estimate(made.AreaMm2, 0), unit));
        }

        terminal.WriteTable(table);
        if (answer.Templates.Any(made => made.Stage == "rough"))
        {
            terminal.Answers.WriteLine($"A rough template leaves {MeasureText.Length(new(answer.AllowanceMm, 0), unit)} for finishing all round (--allowance).");
        }

        foreach (var file in answer.Files)
        {
            terminal.Answers.WriteLine(file);
        }

        terminal.Answers.WriteLine("Print at 100 % (\"actual size\"), then measure both check bars: they must read 100.0 mm. If not, give --print-ratio.");
        terminal.Answers.WriteLine(CutCautions.InShort);
    }
}
