using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Pages;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Comparing;
using SectionScan.Jobs.Proving;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Proof;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Prove;

/// <summary>Proves finished sections against their targets.</summary>
internal sealed class ProveCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<ProveSettings>
{
    public override int Execute(CommandContext context, ProveSettings settings, CancellationToken cancellationToken)
    {
        var library = LibraryOption.PathOf(settings.Library);
        if (!SectionFiles.Read(settings.Target, library, TimeProvider.System).TryGet(out var targets, out var problem)
            || !SectionFiles.Read(settings.Finished, library, TimeProvider.System).TryGet(out var finished, out problem)
            || !PortProof.Of(targets, finished, settings.Terms, cancellationToken).TryGet(out var proof, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        var (proved, failed) = proof;
        foreach (var unproved in failed)
        {
            problems.Print(unproved);
        }

        if (proved.Count == 0)
        {
            return ExitCode.UnusableInput;
        }

        var unit = settings.Units.OfLength;
        IReadOnlyList<string> files = [];
        if (settings.Out is not null && !ProofFiles.Write(
            proved, failed, unit, PaperSize.FromName(settings.Paper)!, $"SectionScan {SectionScanApp.Version}", settings.Out).TryGet(out files!, out problem))
        {
            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(ProofAnswer.Of(proved));
        }
        else
        {
            Show(proved, unit);
            foreach (var file in files)
            {
                terminal.Answers.WriteLine(file);
            }
        }

        return ExitCode.OfBatch(proved.Count, failed.Count);
    }

    private void Show(IReadOnlyList<ProvedSection> proved, LengthUnit unit)
    {
        var table = new Table().Border(TableBorder.Simple).AddColumn("station").AddColumn("verdict");
        foreach (var heading in new[] { "too far, most", "metal left, most" })
        {
            table.AddColumn(new TableColumn(heading).RightAligned());
        }

        foreach (var section in proved)
        {
            table.AddRow(
                section.Finished.Station?.ToString(CultureInfo.InvariantCulture) ?? section.Finished.Name, ProofWords.Of(section.Proof.Verdict),
                WithU(section.Proof.Highest, unit), WithU(section.Proof.Lowest, unit));
        }

        terminal.WriteTable(table);
        foreach (var section in proved)
        {
            foreach (var finding in section.Proof.Findings)
            {
                terminal.Answers.WriteLine($"{section.Title}: {ProofWords.Of(finding, unit)}");
            }
        }

        terminal.Answers.WriteLine("A proof of shape says nothing of wall thickness, cracks or leaks: pressure test before use.");
    }

    private static string WithU(ProvedPlace place, LengthUnit unit) =>
        $"{MeasureText.Deviation(place.DeviationMm, unit)} ± {MeasureText.Length(new(Estimate.CoverageFactor * place.StandardUncertaintyMm, 0), unit)}";
}
