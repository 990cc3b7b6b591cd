using System.Globalization;
using SectionScan.Porting.TargetShapes;

namespace SectionScan.Jobs.TargetShapes;

/// <summary>Limits in plain words.</summary>
public static class LimitWords
{
    /// <summary>"width at most 36 mm (wider meant relocating an oil drain)".</summary>
    public static string Of(TargetLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        var bound = limit.Kind switch
        {
            "own metal" => "own wall stays",
            "keep-out" => string.Create(CultureInfo.InvariantCulture, $"at least {limit.Bound:0.##} mm away"),
            _ => string.Create(CultureInfo.InvariantCulture, $"{limit.Kind} at most {limit.Bound:0.##} {limit.Unit}"),
        };
        return limit.Note.Length == 0 ? bound : $"{bound} ({limit.Note})";
    }

    /// <summary>"held the right wall back by up to 0.40 mm, from −21° to 18°", or that it did not bind.</summary>
    public static string Effect(TargetLimit limit)
    {
        ArgumentNullException.ThrowIfNull(limit);
        return !limit.IsActive ? "not reached" : string.Join("; ", limit.Stretches.Select(stretch => string.Create(
            CultureInfo.InvariantCulture,
            $"held back {stretch.Sectors} by up to {stretch.HeldBackMm:0.00} mm ({stretch.FromDeg:0}° to {stretch.ToDeg:0}°)")));
    }
}
