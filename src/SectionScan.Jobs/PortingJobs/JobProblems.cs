using System.Globalization;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.PortingJobs;

/// <summary>What can go wrong with a job and its folder.</summary>
public static class JobProblems
{
    /// <summary>There is no such job.</summary>
    public static Problem NotFound(string id) => new(
        "job-not-found", "There is no such job.", id, "Go back to the first page and choose one of the jobs there.");

    /// <summary>The job's file is not one.</summary>
    public static Problem Damaged(string where, string reason) => new(
        "job-damaged", $"The job's file cannot be read ({reason}).", where,
        "Put the file back from a backup. The photos and section documents in the job's folder are not touched.");

    /// <summary>The job has grown beyond what is read again.</summary>
    public static Problem TooLarge(string where) => new(
        "job-too-large", "The job has grown too large to be saved; the last change was not made.", where,
        "Remove photos that are not needed, or begin another job.");

    /// <summary>Another workbench works on the folder.</summary>
    public static Problem FolderInUse(string folder) => new(
        "jobs-folder-in-use", "Another workbench works on this folder already.", folder,
        "Go on in the page that it opened, or end it first. Any number of pages may show one workbench.");

    /// <summary>A job needs a name.</summary>
    public static Problem NameMissing() => new(
        "job-name-missing", "The job has no name.", "job", "Give it a name that you will know it by, such as the engine and the date.");

    /// <summary>The job holds as many photos as it may.</summary>
    public static Problem TooManyPhotos(int most) => new(
        "job-too-many-photos", string.Create(CultureInfo.InvariantCulture, $"A job holds at most {most} photos."), "job",
        "Remove photos that are not needed, or begin another job.");

    /// <summary>A file was sent that is longer than a photo may be.</summary>
    public static Problem UploadTooLarge(string where, long mostBytes) => new(
        "upload-too-large", string.Create(CultureInfo.InvariantCulture, $"The file is longer than {mostBytes / 1_000_000} MB."), where,
        "Send the photo as the camera saved it (JPEG), one file for each photo.");

    /// <summary>A measured check bar that cannot be right.</summary>
    public static Problem CheckBarUnlikely(double measuredMm, double nominalMm) => new(
        "check-bar-unlikely",
        string.Create(CultureInfo.InvariantCulture, $"{measuredMm:0.##} mm is far from the {nominalMm:0} mm that the bar should measure."),
        "check bar",
        "Measure the bar between its end marks in millimetres. If it is right, print the sheet again at actual size, without fitting to the page.");

    /// <summary>A thickness that no slice has.</summary>
    public static Problem ThicknessUnlikely(double mostMm) => new(
        "thickness-unlikely", string.Create(CultureInfo.InvariantCulture, $"A slice is 0 to {mostMm:0} mm thick."), "thickness",
        "Measure the slice with a calliper and give millimetres.");

    /// <summary>A port that was chosen is no longer there.</summary>
    public static Problem PortGone(string name) => new(
        "port-gone", $"There is no section of \"{name}\" any more.", name, "Choose another port, or digitise its photos again.");

    /// <summary>No kind of template is wanted.</summary>
    public static Problem NoTemplateKind() => new(
        "no-template-kind", "Neither plugs nor plates are wanted.", "templates", "Choose one of them, or both.");

    /// <summary>A job of which no document can be written.</summary>
    public static Problem WithoutStations(string name) => new(
        "job-without-stations", "No port of the job has two stations whose places along the centreline are told.", name,
        "Enter at Decide, under \"Along the port\", how far each station lies from the port's face.");
}
