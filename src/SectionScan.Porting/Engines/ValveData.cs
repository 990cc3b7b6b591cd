using System.Text.Json.Serialization;
using SectionScan.Metrology.Quantities;
using SectionScan.Porting.Documents;

namespace SectionScan.Porting.Engines;

/// <summary>The valve at a port's end, its seat and its guide. Lengths in mm.</summary>
/// <param name="DiameterMm">Diameter of the valve's head.</param>
/// <param name="StemMm">Diameter of its stem.</param>
public sealed record ValveData(double DiameterMm, double StemMm)
{
    /// <summary>Largest lift; null when not told.</summary>
    public double? LiftMm { get; init; }

    /// <summary>Width of the seat's cone, measured across the valve's axis (radially); null when not told.</summary>
    public double? SeatWidthMm { get; init; }

    /// <summary>Angle of the seat's cone from the plane of the valve's head.</summary>
    [JsonPropertyName("seatAngleDeg")]
    [JsonConverter(typeof(DegreesJsonConverter))]
    public Angle SeatAngle { get; init; } = Angle.FromDegrees(45);

    /// <summary>Diameter of the throat, the narrowest ring behind the seat; null when not told.</summary>
    public double? ThroatMm { get; init; }

    /// <summary>Outer diameter of the guide where it stands in the port; null when not told.</summary>
    public double? GuideMm { get; init; }

    /// <summary>How many such valves one port feeds.</summary>
    public int Count { get; init; } = 1;
}
