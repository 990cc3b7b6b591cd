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
                _ = OpenBrowserAsync(host.Address, cancellationToken);
            }

            await host.WaitAsync(cancellationToken);
        }

        return ExitCode.Done;
    }

    /// <summary>Opens the browser; where there is none, says so in one line instead of what its opener has to say.</summary>
    private async Task OpenBrowserAsync(Uri address, CancellationToken stop)
    {
        const string XdgOpen = "xdg-open";
        try
        {
            using var opener = Process.Start(OperatingSystem.IsLinux()
                ? new ProcessStartInfo(XdgOpen, address.ToString()) { RedirectStandardOutput = true, RedirectStandardError = true }
                : new ProcessStartInfo(address.ToString()) { UseShellExecute = true });
            if (opener is null || !OperatingSystem.IsLinux())
            {
                return;
            }

            // Read to their ends, so that a browser that talks on is not held up by a full pipe.
            var (said, complained) = (opener.StandardOutput.ReadToEndAsync(stop), opener.StandardError.ReadToEndAsync(stop));
            await opener.WaitForExitAsync(stop);
            if (opener.ExitCode != 0)
            {
                TellNoBrowser();
            }

            await Task.WhenAll(said, complained);
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException)
        {
            TellNoBrowser();
        }
        catch (OperationCanceledException)
        {
            // The workbench is being closed.
        }
    }

    private void TellNoBrowser() => terminal.Messages.Profile.Out.Writer.WriteLine("No browser could be opened here: copy the address into one.");
}
