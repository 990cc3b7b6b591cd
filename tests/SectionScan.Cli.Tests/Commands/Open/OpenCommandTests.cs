using System.Diagnostics;

namespace SectionScan.Cli.Tests.Commands.Open;

public sealed class OpenCommandTests : IDisposable
{
    private readonly PhotoFolder folder = new();

    public void Dispose() => folder.Dispose();

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
