using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Schedules;

/// <summary>What can stand in the way of a schedule.</summary>
public static class ScheduleProblems
{
    /// <summary>Two schedules without a common stretch.</summary>
    public static Problem Apart(string measured, string reference, double fromMm, double toMm) => new(
        "schedules-apart",
        string.Create(CultureInfo.InvariantCulture, $"It has no stretch in common with {reference}: one ends at {toMm:0.#} mm, the other begins at {fromMm:0.#} mm."),
        measured, "Count the distances of both ports from the same place, such as the manifold face, or compare by share of the length.");

    /// <summary>A whole length that ends before the last station.</summary>
    public static Problem LengthTooShort(string where, double lengthMm, double lastMm) => new(
        "port-length-too-short",
        string.Create(CultureInfo.InvariantCulture, $"The port is said to be {lengthMm:0.##} mm long, but its last station lies at {lastMm:0.##} mm."),
        where, "Give the length from distance 0 at the face to the seat, along the centreline.");

    /// <summary>Stations before the face.</summary>
    public static Problem BeforeFace(string where, double firstMm) => new(
        "station-before-face",
        string.Create(CultureInfo.InvariantCulture, $"The first station lies at {firstMm:0.##} mm, before the face at 0."),
        where, "Count distances from the face when the port's whole length is given.");
}
