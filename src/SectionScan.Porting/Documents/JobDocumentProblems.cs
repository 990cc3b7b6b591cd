using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Porting.Documents;

/// <summary>What can be wrong with a job document.</summary>
public static class JobDocumentProblems
{
    /// <summary>The text is no job document.</summary>
    public static Problem NotAJob(string where, string reason) => new(
        "not-a-job", $"This is not a job: {reason}.", where, $"Give a job document; it begins with \"schema\": \"{JobDocument.SchemaName}\".");

    /// <summary>The text breaks off, names something unknown or lacks something.</summary>
    public static Problem Unusable(string where, long line, string field, string reason) => new(
        "job-unusable",
        string.Create(CultureInfo.InvariantCulture, $"Line {line}{(field.Length == 0 ? "" : $", at {field}")}: {reason}."),
        where, "Correct that line; sample-images/finished.job.json shows a whole job.");

    /// <summary>A field holds something else than it should.</summary>
    public static Problem FieldUnusable(string where, string field, string expected) => new(
        "job-field-unusable", $"The field \"{field}\" should be {expected}.", where, "Correct it in the job document.");

    /// <summary>Two ports of one name.</summary>
    public static Problem PortTwice(string where, string name) => new(
        "job-port-twice", $"Two ports are called \"{name}\".", where, "Give each port of the job a name of its own.");

    /// <summary>A comparison, plan, proof or joint names no port of the job.</summary>
    public static Problem PortUnknown(string where, string name, IEnumerable<string> known) => new(
        "job-port-unknown", $"The job's work names the port \"{name}\", which the job does not have.", where,
        $"Name one of these: {string.Join(", ", known)}.");

    /// <summary>A file outside the job's folder.</summary>
    public static Problem OutsideFolder(string where, string file) => new(
        "job-file-outside", $"The file \"{file}\" lies outside the job's folder.", where,
        "Put the file beside the job document or below it, and name it by its path from there.");

    /// <summary>A port without stations.</summary>
    public static Problem StationsMissing(string where) => new(
        "job-stations-missing", "The port needs its stations once: either \"stations\" or a \"stationTable\".", where,
        "Write \"stations\": [{\"station\": 1, \"distanceMm\": 0}, ...] with the distance along the centreline.");
}
