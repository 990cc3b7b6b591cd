using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Drawings.Sections;
using SectionScan.Jobs.Cutting;
using SectionScan.Jobs.Joints;
using SectionScan.Jobs.Ports;
using SectionScan.Jobs.Proving;
using SectionScan.Jobs.WholeJobs;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Proof;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Job;

/// <summary>Runs a job from its photos to its report.</summary>
internal sealed class JobRunCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json, ProgressReport progress) : Command<JobRunSettings>
{
    private const string Schema = "sectionscan/job-result/1";
    private const string Suffix = ".job.json";

    public override int Execute(CommandContext context, JobRunSettings settings, CancellationToken cancellationToken)
    {
        var order = new JobOrder(settings.Job, settings.Out ?? FolderBeside(settings.Job), $"{SectionScanApp.Name} {SectionScanApp.Version}")
        {
            Unit = settings.Units.OfLength,
        };
        var made = progress.Follow("Job", settings, follow => RunJob.Run(order, follow, cancellationToken));
        if (!made.TryGet(out var run, out var problem))
        {
            return Refuse(settings, problem);
        }

        if (settings.IsJson)
        {
            Write(run);
        }
        else
        {
            Tell(run, new(order.Unit));
        }

        return ExitCode.Done;
    }

    private static string FolderBeside(string job)
    {
        var name = Path.GetFileName(job);
        var stem = name.EndsWith(Suffix, StringComparison.OrdinalIgnoreCase) ? name[..^Suffix.Length] : Path.GetFileNameWithoutExtension(name);
        return Path.Combine(Path.GetDirectoryName(Path.GetFullPath(job))!, stem + "-results");
    }

    private void Write(JobRun run) => json.Write(new
    {
        Schema,
        Status = "ok",
        Report = new { Html = run.HtmlPath, Pdf = run.PdfPath },
        Repetition = run.Repetition.Kind,
        run.Repetition.ChangedInputs,
        run.Repetition.ChangedResults,
        Ports = run.Outcome.Ports.Select(port => new
        {
            port.Plan.Name,
            Schedule = ScheduleAnswer.Of(port.Schedule, [.. run.Outcome.Comparisons.Where(each => each.Measured == port).Select(each => each.Schedules)]),
            GasSpeed = port.GasSpeed is { } speeds ? GasSpeedAnswer.Of(speeds) : null,
        }),
        Comparisons = run.Outcome.Comparisons.Select(each => new
        {
            Port = each.Measured.Plan.Name,
            With = each.Reference.Plan.Name,
            Stations = each.Stations.Select(station => new
            {
                station.Station,
                station.Result.MeanDeviationMm,
                LowestDeviationMm = station.Result.Lowest.DeviationMm,
                HighestDeviationMm = station.Result.Highest.DeviationMm,
                station.DeviationExpandedUncertaintyMm,
                station.IsBeyond,
            }),
        }),
        Plans = run.Outcome.Work.Plans.Select(each => CutPlanAnswer.Of(each.Plan, [])),
        Proofs = run.Outcome.Work.Proofs.Select(each => ProofAnswer.Of(each.Sections)),
        Joints = run.Outcome.Work.Joints.Select(each => JointAnswer.Of(new(each.Match, [], each.Photos))),
        run.Record.Inputs,
        run.Record.Results,
    });

    private void Tell(JobRun run, ShownUnits units)
    {
        foreach (var port in run.Outcome.Ports)
        {
            var volume = port.Schedule.Volume.VolumeMm3;
            terminal.Answers.WriteLine(Text(
                $"{port.Plan.Name}: {port.Sections.Count} sections, volume {units.Volume(volume)} {units.VolumeName} (k = 2)."));
            foreach (var judgement in port.Schedule.Judgements.Concat(port.GasSpeed?.Judgements ?? []).Where(each => each.Level == JudgementLevel.Outside))
            {
                terminal.Answers.WriteLine($"  {judgement.In(units.Words)}");
            }
        }

        foreach (var compared in run.Outcome.Comparisons)
        {
            foreach (var each in compared.Stations.Where(each => each.IsBeyond))
            {
                terminal.Answers.WriteLine(Text(
                    $"{compared.Measured.Plan.Name}, station {each.Station}: {units.Length(each.Result.Highest.DeviationMm)} ± {units.Length(each.DeviationExpandedUncertaintyMm)} {units.LengthName} beyond {compared.Reference.Plan.Name}."));
            }
        }

        foreach (var proof in run.Outcome.Work.Proofs)
        {
            var failing = proof.Sections.Where(section => section.Proof.Verdict == Verdict.DoesNotConform).Select(section => section.Title).ToList();
            terminal.Answers.WriteLine($"Proof of {proof.Asked.Port} against {proof.Asked.Against}: "
                + (failing.Count > 0 ? $"{string.Join(", ", failing)}: does not conform." : "no section fails."));
        }

        foreach (var joint in run.Outcome.Work.Joints)
        {
            foreach (var opening in joint.Match.Openings)
            {
                terminal.Answers.WriteLine($"Joint of {opening.Manifold.Name} and {opening.Port.Name}: step {units.Deviation(opening.Lowest.DeviationMm)} to {units.Deviation(opening.Highest.DeviationMm)} {units.LengthName}.");
            }
        }

        terminal.Answers.WriteLine(run.Repetition.InWords);
        terminal.Answers.WriteLine("The report, to read on the screen and to print:");
        terminal.Answers.Profile.Out.Writer.WriteLine(run.HtmlPath);
        terminal.Answers.Profile.Out.Writer.WriteLine(run.PdfPath);
    }

    private int Refuse(JobRunSettings settings, Problem problem)
    {
        if (settings.IsJson)
        {
            json.Write(new { Schema, Status = "failed", Error = new { problem.Code, Message = problem.What, problem.Remedy } });
        }

        problems.Print(problem);
        return ExitCode.UnusableInput;
    }

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
