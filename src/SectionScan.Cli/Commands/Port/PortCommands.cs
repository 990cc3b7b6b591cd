using SectionScan.Cli.Commands.GasSpeed;
using SectionScan.Cli.Commands.Job;
using SectionScan.Cli.Commands.Schedule;
using SectionScan.Cli.Options;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Port;

/// <summary>The commands for a port as one thing, and for whole jobs.</summary>
internal static class PortCommands
{
    /// <summary>Adds them.</summary>
    public static void Add(IConfigurator commands)
    {
        commands.AddCommand<PortCommand>("port")
            .WithDescription("Ties the sections of one port together, each at its station along the centreline.")
            .WithExample("port", "exemplar/p01.station-1.section.json", "exemplar/p01.station-2.section.json", "--stations", "stations.csv", "--name", "\"intake 1\"", "--out", "exemplar.port.json");
        commands.AddCommand<ScheduleCommand>("schedule")
            .WithDescription("Shows area, width, height and volume along a port, what changes suddenly, and how it compares with others.")
            .WithExample("schedule", "finished.port.json", "--with", "exemplar.port.json", "--out", "results")
            .WithExample("schedule", "finished.port.json", "--length", "122", "--burette", "120.8");
        commands.AddCommand<GasSpeedCommand>("gas-speed")
            .WithDescription("Shows mean gas speed at every station, inlet Mach index, areas at the valve, and speed on the flow bench.")
            .WithExample("gas-speed", "finished.port.json", "--bore", "92", "--stroke", "72.2", "--rpm-to", "6500", "--valve", "40", "--stem", "7")
            .WithExample("gas-speed", "--formulas");
        commands.AddBranch<OutputSettings>("job", job =>
        {
            job.SetDescription("Runs all that belongs to one head again and again from its photos: sections, schedule, gas speed, comparison, report.");
            job.AddCommand<JobRunCommand>("run")
                .WithDescription("Runs a job from its photos to its report (HTML and PDF).")
                .WithExample("job", "run", "sample-images/finished.job.json", "--out", "results");
            job.AddCommand<JobCheckCommand>("check")
                .WithDescription("Checks a job document and that its files are there, without measuring.")
                .WithExample("job", "check", "sample-images/finished.job.json");
        });
    }
}
