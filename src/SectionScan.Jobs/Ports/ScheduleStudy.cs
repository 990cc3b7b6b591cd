using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Judgements;
using SectionScan.Porting.Ports;
using SectionScan.Porting.Schedules;

namespace SectionScan.Jobs.Ports;

/// <summary>A port as one thing: schedule, taper, volume, and the volume a burette filled.</summary>
/// <param name="Port">The port.</param>
/// <param name="Schedule">Its area schedule.</param>
/// <param name="Volume">Its volume: between the end stations, or from face to seat when its length is told.</param>
/// <param name="Burette">The check against a burette, or null.</param>
/// <param name="Judgements">What is sudden, and what the burette says.</param>
public sealed record ScheduleStudy(
    Port Port, AreaSchedule Schedule, PortVolume Volume, BuretteCheck? Burette, IReadOnlyList<Judgement> Judgements)
{
    /// <summary>Studies a port.</summary>
    /// <param name="port">The port.</param>
    /// <param name="lengthMm">Its whole length from the face at distance 0 to the seat, mm, or null.</param>
    /// <param name="buretteMm3">The volume filled, mm³, or null.</param>
    /// <returns>The study, or one of <see cref="ScheduleProblems"/>.</returns>
    public static Result<ScheduleStudy> Of(Port port, double? lengthMm, Estimate? buretteMm3)
    {
        ArgumentNullException.ThrowIfNull(port);
        var schedule = AreaSchedule.Of(port);
        if (lengthMm is { } told && told < schedule.ToMm)
        {
            return ScheduleProblems.LengthTooShort(port.Name, told, schedule.ToMm);
        }

        if (lengthMm is not null && schedule.FromMm < 0)
        {
            return ScheduleProblems.BeforeFace(port.Name, schedule.FromMm);
        }

        var volume = lengthMm is { } whole ? PortVolume.Of(schedule, 0, whole) : PortVolume.Of(schedule);
        var check = buretteMm3 is { } filled ? new BuretteCheck(volume, filled) : null;
        return new ScheduleStudy(port, schedule, volume, check, [.. ScheduleTaper.Judge(schedule), .. check is null ? Array.Empty<Judgement>() : [check.Judge()]]);
    }
}
