using System.Globalization;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.WholeJobs;
using Spectre.Console;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Job;

/// <summary>Checks a job document before anything is measured.</summary>
internal sealed class JobCheckCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : Command<JobSettings>
{
    private const string Schema = "sectionscan/job-check/1";

    public override int Execute(CommandContext context, JobSettings settings, CancellationToken cancellationToken)
    {
        if (!JobFolder.Open(settings.Job).TryGet(out var source, out var problem))
        {
            if (settings.IsJson)
            {
                json.Write(new { Schema, Status = "failed", Error = new { problem.Code, Message = problem.What, problem.Remedy } });
            }

            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        if (settings.IsJson)
        {
            json.Write(new { Schema, Status = "ok", source.Job.Head, source.Job.Name, Ports = source.Job.Ports.Select(port => port.Name), Files = source.Names() });
        }
        else
        {
            terminal.Answers.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{source.Job.Head}, {source.Job.Name}: {source.Job.Ports.Count} ports ({string.Join(", ", source.Job.Ports.Select(port => port.Name))}), {source.Names().Count} files, all there."));
        }

        return ExitCode.Done;
    }
}
