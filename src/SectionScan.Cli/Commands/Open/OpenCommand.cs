using System.ComponentModel;
using System.Diagnostics;
using SectionScan.Cli.Output;
using SectionScan.Cli.Problems;
using SectionScan.Cli.Terminals;
using SectionScan.Jobs.Libraries;
using SectionScan.Workbench.Hosting;
using Spectre.Console.Cli;

namespace SectionScan.Cli.Commands.Open;

/// <summary>Opens the workbench and keeps it running until Ctrl-C.</summary>
internal sealed class OpenCommand(Terminal terminal, ProblemPrinter problems, JsonOutput json) : AsyncCommand<OpenSettings>
{
    private const string Schema = "sectionscan/open/1";

    public override async Task<int> ExecuteAsync(CommandContext context, OpenSettings settings, CancellationToken cancellationToken)
    {
        var folder = Path.GetFullPath(settings.Folder
            ?? Path.Combine(Environment.GetFolderPath(Environment.SpecialFolder.UserProfile, Environment.SpecialFolderOption.DoNotVerify), "SectionScan"));
        var options = new WorkbenchOptions(
            folder, Path.GetFullPath(settings.Library ?? Path.Combine(folder, LibrarySource.DefaultFileName)), settings.Port,
            [Directory.GetCurrentDirectory(), AppContext.BaseDirectory], $"{SectionScanApp.Name} {SectionScanApp.Version}", TimeProvider.System);
        var started = await WorkbenchHost.StartAsync(options, cancellationToken);
        if (!started.TryGet(out var host, out var problem))
        {
            if (settings.IsJson)
            {
                json.Write(new { Schema, Status = "failed", Error = new { problem.Code, Message = problem.What, problem.Remedy } });
            }

            problems.Print(problem);
            return ExitCode.UnusableInput;
        }

        await using (host)
        {
            if (settings.IsJson)
            {
                json.Write(new { Schema, Status = "ok", Address = host.Address.ToString(), Folder = folder });
            }
            else
            {
                // On a line of its own, past the width of the screen: it is there to be copied.
                terminal.Answers.Profile.Out.Writer.WriteLine($"The workbench is open: {host.Address}");
                terminal.Answers.Profile.Out.Writer.WriteLine("Only this machine can reach it. Ctrl-C ends it; everything is saved as you go.");
            }

            if (!settings.IsWithoutBrowser)
            {
                OpenBrowser(host.Address);
            }

            await host.WaitAsync(cancellationToken);
        }

        return ExitCode.Done;
    }

    private static void OpenBrowser(Uri address)
    {
        try
        {
            using var browser = Process.Start(new ProcessStartInfo(address.ToString()) { UseShellExecute = true });
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException)
        {
            // No browser to be found: the address stands on the screen.
        }
    }
}
