using System.Globalization;
using SectionScan.Cli.Options;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Gauges;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Gauge;

/// <summary>Learns from plugs of known size how well this camera, sheet and person measure.</summary>
internal sealed class GaugeCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json, ProgressReport progress) : Command<GaugeSettings>
{
    public override int Execute(CommandContext context, GaugeSettings settings, CancellationToken cancellationToken)
    {
        LensProfile? lens = null;
        if (settings.Lens is not null && !LensFiles.Read(settings.Lens).TryGet(out lens, out var problem))
        {
            return Refuse(settings, [problem]);
        }

        var how = new DigitiseSettings { Lens = lens, PrintRatio = settings.PrintRatio is { } r ? (r.X, r.Y) : null };
        var outcome = progress.Follow("Measuring", settings, follow => MakeGaugeStudy.Run(settings.Study, how, follow, cancellationToken));
        if (outcome.Study is not { } study)
        {
            return Refuse(settings, outcome.Problems);
        }

        if (!GaugeFiles.Write(study, settings.Out).TryGet(out _, out problem))
        {
            return Refuse(settings, [problem]);
        }

        foreach (var caution in outcome.Cautions)
        {
            var cut = caution.IndexOf(". ", StringComparison.Ordinal);
            problems.PrintWarning(new("warning", caution[..(cut + 1)], settings.Study, caution[(cut + 2)..]));
        }

        if (settings.IsJson)
        {
            json.Write(GaugeAnswer.Of(study, settings.Out, outcome.Cautions, settings.Units == UnitOption.Inch));
        }
        else
        {
            Show(study, settings);
        }

        return ExitCode.Done;
    }

    private int Refuse(GaugeSettings settings, IReadOnlyList<Problem> told)
    {
        if (settings.IsJson)
        {
            json.Write(GaugeAnswer.Failed(told));
        }

        foreach (var problem in told)
        {
            problems.Print(problem);
        }

        return ExitCode.UnusableInput;
    }

    private void Show(GaugeStudy study, GaugeSettings settings)
    {
        var unit = GaugeUnit.Of(settings.Units == UnitOption.Inch);
        var table = new Table().Border(TableBorder.Simple).AddColumn("plug").AddColumn("shape")
            .AddColumn(new TableColumn("size").RightAligned().NoWrap()).AddColumn(new TableColumn("photos").RightAligned())
            .AddColumn(new TableColumn("too wide by").RightAligned().NoWrap()).AddColumn(new TableColumn("spread").RightAligned().NoWrap());
        foreach (var plug in study.Plugs)
        {
            var own = study.Readings.Where(r => r.Plug == plug.Name).Select(r => r.ExcessMm).ToArray();
            table.AddRow(
                new Text(plug.Name), new Text(plug.Shape.ToString().ToLowerInvariant()),
                new Text(plug.Shape is PlugShape.Circle or PlugShape.Square ? unit.Size(plug.WidthMm) : unit.Size(plug.WidthMm, plug.HeightMm)),
                new Text(own.Length.ToString(CultureInfo.InvariantCulture)),
                new Text(unit.Signed(own.Average())), new Text(unit.Fine(own.Max() - own.Min())));
        }

        var answers = terminal.Answers;
        var (edge, scale) = (new Estimate(study.Bias.EdgeMm, study.Bias.EdgeStandardUncertaintyMm), new Estimate(study.Bias.Scale, study.Bias.ScaleStandardUncertainty));
        answers.Write(table);
        answers.WriteLine($"Bias: edges {unit.Signed(edge.Value)} ± {unit.Fine(edge.ExpandedUncertainty)} outward, lengths {FormattableString.Invariant($"{100 * scale.Value:+0.000;−0.000;0.000} ± {100 * scale.ExpandedUncertainty:0.000} %")} (k = 2).");
        answers.WriteLine($"Repeatability of a width: {unit.Fine(study.RepeatabilityMm)} (standard deviation, {study.RepeatabilityFreedom.ToString(CultureInfo.InvariantCulture)} degrees of freedom).");
        answers.WriteLine(study.Combinations == 1
            ? "Reproducibility: not studied, one person, camera and sheet took part."
            : $"Reproducibility of a width: {unit.Fine(study.ReproducibilityMm)} over {study.Combinations.ToString(CultureInfo.InvariantCulture)} combinations; {string.Join(", ", study.Factors.Select(f => $"by {f.Factor} {(f.ReproducibilityMm is { } r ? unit.Fine(r) : f.Levels.Count == 1 ? "not varied" : "not told apart")}"))}.");
        answers.WriteLine($"With --gauge: edge u = {unit.Fine(study.EdgeStandardUncertaintyMm)}, scale u = {FormattableString.Invariant($"{100 * study.ScaleStandardUncertainty:0.000}")} %.");
        answers.WriteLine("Analysis of variance of a crossed study with interaction: AIAG, Measurement Systems Analysis, 4th edition.");
        answers.WriteLine($"Study written to {settings.Out}");
    }
}
