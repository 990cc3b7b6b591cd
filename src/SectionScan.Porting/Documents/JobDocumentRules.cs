using System.Globalization;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Engines;
using SectionScan.Porting.Ports;

namespace SectionScan.Porting.Documents;

/// <summary>What must hold in a job before its files are opened.</summary>
public static class JobDocumentRules
{
    private const double LeastPrintRatio = 0.8;
    private const double MostPrintRatio = 1.25;
    private const double MostThicknessMm = 60;

    /// <summary>Checks a job.</summary>
    public static Result<JobDocument> Check(JobDocument job, string where)
    {
        ArgumentNullException.ThrowIfNull(job);
        if (FirstProblem(job, where) is { } problem)
        {
            return problem;
        }

        if (job.Engine is not null && !EngineRules.Check(job.Engine, $"{where}, engine").TryGet(out _, out problem))
        {
            return problem;
        }

        foreach (var port in job.Ports)
        {
            if (PortProblem(port, job.Engine, $"{where}, port \"{port.Name}\"") is { } bad)
            {
                return bad;
            }
        }

        return job;
    }

    /// <summary>The stations that a port of a job states itself.</summary>
    /// <param name="port">The port; its stations written in the job.</param>
    /// <param name="where">For messages.</param>
    public static Result<StationTable> Stations(JobPort port, string where)
    {
        ArgumentNullException.ThrowIfNull(port);
        if (port.Stations.FirstOrDefault(each => !double.IsFinite(each.TiltDeg + each.TurnDeg)) is { } odd)
        {
            return StationProblems.TiltOutOfRange(where, odd.Station, odd.TiltDeg);
        }

        return StationTable.From(
            port.Stations.Select(each => new StationPosition(each.Station, each.DistanceMm)
            {
                Tilt = Angle.FromDegrees(each.TiltDeg),
                Turn = Angle.FromDegrees(each.TurnDeg),
                DistanceStandardUncertaintyMm = each.UMm,
            }),
            where);
    }

    private static Problem? FirstProblem(JobDocument job, string where)
    {
        if (string.IsNullOrWhiteSpace(job.Head) || string.IsNullOrWhiteSpace(job.Name))
        {
            return JobDocumentProblems.FieldUnusable(where, string.IsNullOrWhiteSpace(job.Head) ? "head" : "name", "a name in words");
        }

        if (job.Date is not null && !DateOnly.TryParseExact(job.Date, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out _))
        {
            return JobDocumentProblems.FieldUnusable(where, "date", "a day such as 2026-11-26");
        }

        if (job.Ports.Count == 0)
        {
            return JobDocumentProblems.FieldUnusable(where, "ports", "a list of one port or more");
        }

        if (job.Ports.GroupBy(port => port.Name, StringComparer.OrdinalIgnoreCase).FirstOrDefault(group => group.Count() > 1) is { } twice)
        {
            return JobDocumentProblems.PortTwice(where, twice.Key);
        }

        if (job.PrintRatio is not null && (job.PrintRatio.Count != 2 || job.PrintRatio.Any(ratio => !(ratio is >= LeastPrintRatio and <= MostPrintRatio))))
        {
            return JobDocumentProblems.FieldUnusable(where, "printRatio", "two numbers near 1, measured over nominal length, such as [0.998, 1.001]");
        }

        if (job.Lens is { } lens && (lens.Profile is null) == (lens.Photos.Count == 0))
        {
            return JobDocumentProblems.FieldUnusable(where, "lens", "either a profile's file or photos of the bare sheet");
        }

        return JobWorkRules.FirstProblem(job, where)
            ?? (job.Files().FirstOrDefault(file => !StaysInside(file)) is { } outside ? JobDocumentProblems.OutsideFolder(where, outside) : null);
    }

    private static Problem? PortProblem(JobPort port, EngineData? engine, string where)
    {
        if (string.IsNullOrWhiteSpace(port.Name))
        {
            return JobDocumentProblems.FieldUnusable(where, "name", "a name in words");
        }

        if (port.Photos.Count + port.Sections.Count == 0)
        {
            return JobDocumentProblems.FieldUnusable(where, "photos", "a list of one photo or more, unless section documents are named");
        }

        if (port.ThicknessMm is { } thickness && !(thickness is >= 0 and <= MostThicknessMm))
        {
            return JobDocumentProblems.FieldUnusable(where, "thicknessMm", "the slices' thickness in mm, from 0 to 60");
        }

        if (port.ShrinkagePercent is { } shrinkage && !(port.ThicknessMm is not null && shrinkage is >= -2 and <= 10))
        {
            return JobDocumentProblems.FieldUnusable(where, "shrinkagePercent", "percent of length from -2 to 10, for slices of a mould only");
        }

        if ((port.Stations.Count == 0) == (port.StationTable is null))
        {
            return JobDocumentProblems.StationsMissing(where);
        }

        if (port.Stations.Count > 0 && !Stations(port, where).TryGet(out _, out var problem))
        {
            return problem;
        }

        if (port.Valve is not null && !EngineRules.Check(port.Valve, engine?.BoreMm, where).TryGet(out _, out problem))
        {
            return problem;
        }

        return port.LengthMm is { } length && !(length is > 0 and <= StationTable.MostDistanceMm) ? JobDocumentProblems.FieldUnusable(where, "lengthMm", "a length along the port in mm")
            : port.Burette is { } filled && !(filled.VolumeCm3 is > 0 and < 1e5 && filled.UCm3 is >= 0 and < 1e4) ? JobDocumentProblems.FieldUnusable(where, "burette", "a volume in cm³ above zero")
            : port.MeanFlowCoefficient is { } c && !(c is > 0.05 and < 1) ? JobDocumentProblems.FieldUnusable(where, "meanFlowCoefficient", "a number between 0.05 and 1; 0.35 to 0.4 is usual")
            : port.Flow.Any(flow => !(flow.FlowCfm is > 0 and < 1e5 && flow.TestPressureInH2O is > 0 and < 400 && flow.LiftMm is null or (> 0 and < 200)))
                ? JobDocumentProblems.FieldUnusable(where, "flow", "flow figures in cfm, a test pressure in inches of water and a lift in mm, all above zero")
            : null;
    }

    private static bool StaysInside(string file) =>
        file.Length > 0 && !Path.IsPathRooted(file) && !file.Contains(':', StringComparison.Ordinal) && !file.Contains('\0', StringComparison.Ordinal)
        && !file.Split('/', '\\').Any(part => part is "..");
}
