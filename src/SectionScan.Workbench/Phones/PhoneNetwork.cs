using System.Net;

namespace SectionScan.Workbench.Phones;

/// <summary>A network that this machine is in.</summary>
/// <param name="Name">What the system calls it.</param>
/// <param name="Address">This machine's address there.</param>
public sealed record PhoneNetwork(string Name, IPAddress Address);
