using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Digitising;

/// <summary>Digitises photos and writes what they give.</summary>
public static class DigitisePhotos
{
    private static readonly string[] Endings = [".section.json", ".svg", ".csv"];

    /// <summary>Runs the order. A photo that gives nothing hinders no other.</summary>
    /// <param name="order">What and how.</param>
    /// <param name="progress">Told of each photo.</param>
    /// <param name="stop">Ends the batch; what is finished is kept.</param>
    /// <returns>One outcome for each photo, in the order given; or why nothing could be begun.</returns>
    public static Result<IReadOnlyList<PhotoOutcome>> Run(
        DigitiseOrder order, IProgress<JobProgress>? progress = null, CancellationToken stop = default)
    {
        ArgumentNullException.ThrowIfNull(order);
        OutputFolder? folder = null;
        if (order.OutputFolder is not null && !OutputFolder.Open(order.OutputFolder).TryGet(out folder, out var problem))
        {
            return problem;
        }

        var steps = new StepCounter(order.Photos.Count, progress);
        var outcomes = new PhotoOutcome[order.Photos.Count];
        var names = FileNames.Unique(order.Photos.Select(photo => Path.GetFileNameWithoutExtension(photo)));
        var options = new ParallelOptions { MaxDegreeOfParallelism = Environment.ProcessorCount, CancellationToken = stop };
        Parallel.For(0, outcomes.Length, options, i =>
        {
            outcomes[i] = Digitise(order, order.Photos[i], names[i], folder);
            steps.Report(Path.GetFileName(order.Photos[i]));
        });
        return outcomes;
    }

    private static PhotoOutcome Digitise(DigitiseOrder order, string path, string stem, OutputFolder? folder)
    {
        var settings = order.Settings with { WantsPicture = folder is not null };
        if (!Digitiser.Digitise(path, settings).TryGet(out var digitised, out var problem))
        {
            return new(path, null, [], problem, []);
        }

        var documents = new List<DigitisedDocument>();
        foreach (var section in digitised.Sections)
        {
            if (!Document(order, digitised, section, path).TryGet(out var document, out problem))
            {
                return new(path, null, [], problem, []);
            }

            var measured = MeasuredOutline.Of(document.Section.Outline, document.Section.ErrorSources);
            documents.Add(new(document, measured, FileName(stem, section, digitised, documents.Count)));
        }

        return folder is null
            ? new(path, digitised, documents, null, [])
            : Write(order, path, stem, digitised, documents, folder);
    }

    private static Result<SectionDocument> Document(DigitiseOrder order, DigitisedPhoto photo, DigitisedSection section, string path) =>
        new SectionDocument(
            new(section.Station, section.IsOpening ? SectionSubject.Opening : SectionSubject.Mould, section.ThicknessMm, section.Outline,
                section.ErrorSources, section.Warnings),
            section.Placement, section.PlacedOutline, photo.Photo, photo.Target, photo.Camera, order.SettingsInWords, order.Program)
            .Rounded(path);

    private static PhotoOutcome Write(
        DigitiseOrder order, string path, string stem, DigitisedPhoto photo, List<DigitisedDocument> documents, OutputFolder folder)
    {
        var files = new List<(string Name, Action<Stream> Write)>();
        foreach (var done in documents)
        {
            var name = done.FileName[..^".section.json".Length];
            files.AddRange(Endings.Select(ending => (name + ending, (Action<Stream>)(stream =>
                SectionFiles.Write(ending, done.Document, done.Measured, order.IsInch, stream)))));
        }

        if (photo.AnnotatedJpeg is { } picture)
        {
            files.Add((stem + ".outlines.jpg", stream => stream.Write(picture)));
        }

        return folder.WriteAll(files).TryGet(out var written, out var problem)
            ? new(path, photo, documents, null, written)
            : new(path, null, [], problem, []);
    }

    private static string FileName(string stem, DigitisedSection section, DigitisedPhoto photo, int index)
    {
        var isOnlyOne = section.Station is not null && photo.Sections.Count(s => s.Station == section.Station) == 1;
        return isOnlyOne
            ? FormattableString.Invariant($"{stem}.station-{section.Station}.section.json")
            : FormattableString.Invariant($"{stem}.{(section.IsOpening ? "opening" : "slice")}-{index + 1}.section.json");
    }
}
