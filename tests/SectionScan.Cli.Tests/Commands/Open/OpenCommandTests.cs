using System.Diagnostics;

namespace SectionScan.Cli.Tests.Commands.Open;

public sealed class OpenCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

    // An opener of the system's that finds no browser, as xdg-open does on a machine without one.
    [Fact]
    public async Task A_machine_without_a_browser_is_told_to_copy_the_address_and_nothing_else()
    {
        var opener = folder.Bytes("xdg-open", "#!/bin/sh\necho 'xdg-open: no method available for opening' >&2\nexit 3\n"u8.ToArray());
        using (var chmod = Process.Start("chmod", ["+x", opener]))
        {
            await chmod.WaitForExitAsync();
        }

        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "sectionscan.dll"), "open", "--folder", folder.PathOf("jobs")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["PATH"] = $"{Path.GetDirectoryName(opener)}:{Environment.GetEnvironmentVariable("PATH")}";
        using var program = Process.Start(start)!;
        try
        {
            Assert.StartsWith("The workbench is open: http", await program.StandardOutput.ReadLineAsync(), StringComparison.Ordinal);
            Assert.Equal("No browser could be opened here: copy the address into one.", await program.StandardError.ReadLineAsync().WaitAsync(TimeSpan.FromMinutes(1)));
        }
        finally
        {
            program.Kill();
        }
    }

    /// <summary>POSIX.1-2017, kill: SIGTERM is what the system sends at logging out and shutting down.</summary>
    [Fact]
    public async Task It_ends_when_the_system_asks_for_it_and_leaves_the_folder_free()
    {
        for (var i = 0; i < 2; i++)
        {
            using var program = Process.Start(new ProcessStartInfo(
                "dotnet", [Path.Combine(AppContext.BaseDirectory, "sectionscan.dll"), "open", "--folder", folder.PathOf("jobs"), "--no-browser", "--json"])
            {
                RedirectStandardOutput = true,
            })!;
            try
            {
                Assert.Contains("\"ok\"", await program.StandardOutput.ReadLineAsync() ?? "", StringComparison.Ordinal);

                using var kill = Process.Start("kill", ["-TERM", program.Id.ToString(System.Globalization.CultureInfo.InvariantCulture)]);
                await program.WaitForExitAsync().WaitAsync(TimeSpan.FromMinutes(1));
                Assert.Equal(ExitCode.Done, program.ExitCode);
            }
            finally
            {
                program.Kill();
            }
        }
    }
}
