using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Digitising;
using SectionScan.Jobs.Gauges;
using SectionScan.Jobs.Lenses;
using SectionScan.Metrology.Cameras;
using SectionScan.Metrology.GaugeStudies;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Digitise;

/// <summary>Turns photos into true-size outlines with measures and uncertainties.</summary>
internal sealed class DigitiseCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json, ProgressReport progress)
    : Command<DigitiseCommandSettings>
{
    public override int Execute(CommandContext context, DigitiseCommandSettings settings, CancellationToken cancellationToken)
    {
        LensProfile? lens = null;
        if (settings.Lens is not null && !LensFiles.Read(settings.Lens).TryGet(out lens, out var problem))
        {
            return Refuse(settings, problem);
        }

        GaugeStudy? gauge = null;
        if (settings.Gauge is not null && !GaugeFiles.Read(settings.Gauge).TryGet(out gauge, out problem))
        {
            return Refuse(settings, problem);
        }

        var order = Order(settings, lens, gauge);
        var run = progress.Follow("Digitising", settings, follow => DigitisePhotos.Run(order, follow, cancellationToken));
        if (!run.TryGet(out var outcomes, out problem))
        {
            return Refuse(settings, problem);
        }

        foreach (var outcome in outcomes)
        {
            Report(outcome);
        }

        var isInch = settings.Units == Options.UnitOption.Inch;
        if (settings.IsJson)
        {
            json.Write(DigitiseAnswer.Of(outcomes, isInch));
        }
        else
        {
            new SectionTable(terminal).Show(outcomes, isInch);
        }

        return ExitCode.OfBatch(outcomes.Count(o => o.Problem is null), outcomes.Count(o => o.Problem is not null));
    }

    /// <summary>What stands in the way of every photo alike is told once to a person, and with each photo to a program.</summary>
    private int Refuse(DigitiseCommandSettings settings, Problem problem)
    {
        if (settings.IsJson)
        {
            json.Write(DigitiseAnswer.Of(settings.Photos.Select(photo => new PhotoOutcome(photo, null, [], problem, [])), isInch: false));
        }

        problems.Print(problem);
        return ExitCode.UnusableInput;
    }

    private void Report(PhotoOutcome outcome)
    {
        if (outcome.Problem is { } problem)
        {
            problems.Print(problem);
            return;
        }

        foreach (var refused in outcome.Digitised!.Refused)
        {
            problems.PrintWarning(refused);
        }

        foreach (var warning in outcome.Digitised.Warnings)
        {
            problems.PrintWarning(AsProblem(warning, outcome.Path));
        }

        foreach (var (section, i) in outcome.Digitised.Sections.Select((section, i) => (section, i)))
        {
            // As its document is called; and where it lay, for the picture shows no numbers.
            var where = section.Station is { } station
                ? string.Create(CultureInfo.InvariantCulture, $"{outcome.Path}, station {station}")
                : string.Create(CultureInfo.InvariantCulture, $"{outcome.Path}, {(section.IsOpening ? "opening" : "slice")} {i + 1} near ({section.Placement.Origin.XMm:0}, {section.Placement.Origin.YMm:0}) mm");
            foreach (var caution in section.Cautions)
            {
                problems.PrintWarning(caution with { Where = where });
            }
        }
    }

    /// <summary>A warning is one or more sentences; the last tells what to do.</summary>
    private static Problem AsProblem(string warning, string where)
    {
        var cut = warning.TrimEnd('.').LastIndexOf(". ", StringComparison.Ordinal);
        return cut < 0
            ? new("warning", warning, where, "Look at the picture before you trust the numbers.")
            : new("warning", warning[..(cut + 1)], where, warning[(cut + 2)..]);
    }

    private static DigitiseOrder Order(DigitiseCommandSettings settings, LensProfile? lens, GaugeStudy? gauge)
    {
        var words = new SortedDictionary<string, string>(StringComparer.Ordinal);
        if (settings.Thickness is { } thickness)
        {
            words["thickness"] = thickness.ToString(CultureInfo.InvariantCulture);
        }

        if (settings.Shrinkage is { } shrinkage)
        {
            words["shrinkage"] = shrinkage.ToString(CultureInfo.InvariantCulture);
        }

        if (settings.ShrinkageUncertainty is { } uncertainty)
        {
            words["shrinkage-u"] = uncertainty.ToString(CultureInfo.InvariantCulture);
        }

        if (settings.Subject is { } subject)
        {
            words["subject"] = subject;
        }

        if (settings.Lens is { } file)
        {
            words["lens"] = Path.GetFileName(file);
        }

        if (settings.PrintRatio is { } ratio)
        {
            words["print-ratio"] = ratio.ToString();
        }

        if (settings.Gauge is { } study)
        {
            words["gauge"] = Path.GetFileName(study);
        }

        foreach (var (name, value) in ScaleOptions.InWords(settings))
        {
            words[name] = value;
        }

        if (settings.Up is { } up)
        {
            words["up"] = up.ToString(CultureInfo.InvariantCulture);
        }

        var how = new DigitiseSettings
        {
            ThicknessMm = settings.Thickness,
            Shrinkage = settings.Shrinkage is { } percent ? new(percent / 100, settings.ShrinkageUncertainty / 100) : null,
            LooksForOpenings = settings.Subject is null ? null : settings.Subject == "opening",
            Lens = lens,
            Gauge = gauge,
            PrintRatio = settings.PrintRatio is { } r ? (r.X, r.Y) : null,
            Scale = ScaleOptions.SourceOf(settings),
            Up = settings.Up is { } degrees ? Angle.FromDegrees(degrees) : null,
        };
        return new(
            settings.Photos, how, words, $"{SectionScanApp.Name} {SectionScanApp.Version}", settings.Out, settings.Units == Options.UnitOption.Inch);
    }
}
