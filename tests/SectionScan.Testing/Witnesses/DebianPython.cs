using System.ComponentModel;
using System.Diagnostics;

namespace SectionScan.Testing.Witnesses;

/// <summary>Programs of others that bear witness in tests: scripts for Debian's Python with its shapely, scipy and ezdxf.</summary>
public static class DebianPython
{
    private const string Interpreter = "/usr/bin/python3";

    /// <summary>Runs a script and gives what it printed.</summary>
    /// <param name="script">The script.</param>
    /// <param name="arguments">What it finds in <c>sys.argv[1:]</c>.</param>
    /// <exception cref="InvalidOperationException">Python is missing, or the script failed; its own words are in the message.</exception>
    public static string Run(string script, params string[] arguments)
    {
        var start = new ProcessStartInfo(Interpreter) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (var argument in (string[])["-c", script, .. arguments])
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            using var process = Process.Start(start)!;
            var error = process.StandardError.ReadToEndAsync();
            var output = process.StandardOutput.ReadToEnd();
            process.WaitForExit();
            return process.ExitCode == 0
                ? output
                : throw new InvalidOperationException($"{Interpreter} failed; src/system-packages.sh --tests brings its modules. {error.Result}");
        }
        catch (Win32Exception e)
        {
            throw new InvalidOperationException($"{Interpreter} is missing; src/system-packages.sh --tests brings it.", e);
        }
    }
}
