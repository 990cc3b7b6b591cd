namespace SectionScan.Jobs.PortingJobs;

/// <summary>One porting job as it stands: what was photographed, what came of it, what the person chose. Immutable; a job goes on by
/// being replaced, so that every step can be undone.</summary>
public sealed record PortingJob
{
    /// <summary>The job's name in the person's words.</summary>
    public required string Name { get; init; }

    /// <summary>The head, as the library is to keep it; may be empty.</summary>
    public string Head { get; init; } = string.Empty;

    /// <summary>The port in the library's words: "intake 1".</summary>
    public string Port { get; init; } = "intake 1";

    /// <summary>What the sheet's check bar across (200 mm) measures with a calliper, mm; null while nobody measured it.</summary>
    public double? CheckBarAcrossMm { get; init; }

    /// <summary>What the sheet's check bar up (150 mm) measures with a calliper, mm; null while nobody measured it.</summary>
    public double? CheckBarUpMm { get; init; }

    /// <summary>The lens profile's file within the job's folder, or null.</summary>
    public string? LensFile { get; init; }

    /// <summary>Photos of the bare sheet, to learn the lens from.</summary>
    public IReadOnlyList<JobPhoto> LensPhotos { get; init; } = [];

    /// <summary>The photos, in the order they came.</summary>
    public IReadOnlyList<JobPhoto> Photos { get; init; } = [];

    /// <summary>The sections, photo by photo.</summary>
    public IReadOnlyList<JobSection> Sections { get; init; } = [];

    /// <summary>What is compared with what.</summary>
    public ComparisonChoice Comparison { get; init; } = new();

    /// <summary>What the target shapes are made of.</summary>
    public TargetSettings Target { get; init; } = new();

    /// <summary>The table of what lies behind the walls, below the job's folder; null while nothing is known.</summary>
    public string? WallsFile { get; init; }

    /// <summary>Where the stations lie, and the engine.</summary>
    public PortData PortData { get; init; } = new();

    /// <summary>How the cut is planned.</summary>
    public CutSettings Cut { get; init; } = new();

    /// <summary>How the finished port is proved.</summary>
    public ProofSettings Proof { get; init; } = new();

    /// <summary>Measured over nominal length of the check bars, or null while one of them is not measured.</summary>
    public (double X, double Y)? PrintRatio() => CheckBarAcrossMm is { } across && CheckBarUpMm is { } up
        ? (across / CheckBars.AcrossMm, up / CheckBars.UpMm)
        : null;

    /// <summary>The photo of that id, or null.</summary>
    public JobPhoto? Photo(string id) => Photos.FirstOrDefault(photo => photo.Id == id);

    /// <summary>The photo of the bare sheet of that id, or null.</summary>
    public JobPhoto? LensPhoto(string id) => LensPhotos.FirstOrDefault(photo => photo.Id == id);

    /// <summary>The section of that id, or null.</summary>
    public JobSection? Section(string id) => Sections.FirstOrDefault(section => section.Id == id);

    /// <summary>The stage of the work that a section shows.</summary>
    public string StageOf(JobSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return Photo(section.PhotoId)?.Stage ?? string.Empty;
    }

    /// <summary>What a section is called: "exemplar, station 3".</summary>
    public string NameOf(JobSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        var stage = StageOf(section);
        var what = section.Station is { } station
            ? FormattableString.Invariant($"station {station}")
            : $"section {section.Id[(section.Id.LastIndexOf('-') + 1)..]} of {Photo(section.PhotoId)?.GivenName ?? section.PhotoId}";
        return stage.Length == 0 ? what : $"{stage}, {what}";
    }

    /// <summary>The job with a photo in place of the one with its id.</summary>
    public PortingJob With(JobPhoto photo)
    {
        ArgumentNullException.ThrowIfNull(photo);
        return this with { Photos = [.. Photos.Select(each => each.Id == photo.Id ? photo : each)] };
    }

    /// <summary>The job with a section in place of the one with its id.</summary>
    public PortingJob With(JobSection section)
    {
        ArgumentNullException.ThrowIfNull(section);
        return this with { Sections = [.. Sections.Select(each => each.Id == section.Id ? section : each)] };
    }

    /// <summary>The job without a photo and what came of it.</summary>
    public PortingJob WithoutPhoto(string id) => this with
    {
        Photos = [.. Photos.Where(each => each.Id != id)],
        Sections = [.. Sections.Where(each => each.PhotoId != id)],
    };

    /// <summary>Every file that the job names, below its folder; and its ids, which become parts of file names.</summary>
    public (IEnumerable<string> Files, IEnumerable<string> Ids) Names() => (
        Photos.Concat(LensPhotos).Select(photo => Path.Combine(JobFolder.PhotosName, photo.File)).Concat(Sections.Select(section => section.DocumentFile))
            .Concat(LensFile is { } lens ? [lens] : []),
        Photos.Concat(LensPhotos).Select(photo => photo.Id).Concat(Sections.Select(section => section.Id)));
}
