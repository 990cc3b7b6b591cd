using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Workbench.Hosting;

/// <summary>What can stand in the way of the workbench.</summary>
public static class WorkbenchProblems
{
    /// <summary>Another program listens on the port.</summary>
    public static Problem PortTaken(int port) => new(
        "port-taken",
        string.Create(CultureInfo.InvariantCulture, $"Another program, perhaps another workbench, uses port {port}."),
        string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{port}"),
        "End the other one, or choose another port with --port.");

    /// <summary>The door for a phone cannot be opened.</summary>
    public static Problem DoorStuck(string address, string reason) => new(
        "phone-door-stuck", $"No phone can be let in there ({reason}).", address,
        "Check that this machine is still in that network, or choose another one.");
}
