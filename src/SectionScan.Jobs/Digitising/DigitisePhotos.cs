using System.Text;
using SectionScan.Drawings.Formats;
using SectionScan.Drawings.Sections;
using SectionScan.Imaging.Digitising;
using SectionScan.Jobs.Files;
using SectionScan.Jobs.Progress;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;

namespace SectionScan.Jobs.Digitising;

/// <summary>Digitises photos and writes what they give.</summary>
public static class DigitisePhotos
{
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
        var names = UniqueStems(order.Photos);
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
            var outline = done.Document.Section.Outline;
            var name = done.FileName[..^".section.json".Length];
            files.Add((done.FileName, stream => stream.Write(
                Encoding.UTF8.GetBytes(SectionDocumentFormat.Write(done.Document, MeasureUnits.ForDocument(done.Measured))))));
            files.Add((name + ".svg", stream => SvgWriter.Write(SectionDrawing.Build(outline, Caption(done, order)), stream)));
            files.Add((name + ".csv", stream => OutlineCsv.Write(outline, stream)));
        }

        if (photo.AnnotatedJpeg is { } picture)
        {
            files.Add((stem + ".outlines.jpg", stream => stream.Write(picture)));
        }

        return folder.WriteAll(files).TryGet(out var written, out var problem)
            ? new(path, photo, documents, null, written)
            : new(path, null, [], problem, []);
    }

    private static SectionCaption Caption(DigitisedDocument done, DigitiseOrder order)
    {
        var section = done.Document.Section;
        var title = section.Station is { } station ? $"Station {station}" : section.Subject == SectionSubject.Opening ? "Opening" : "Section";
        return new(title, done.Measured[MeasureCatalogue.Width].Estimate, done.Measured[MeasureCatalogue.Height].Estimate)
        {
            AreaMm2 = done.Measured[MeasureCatalogue.Area].Estimate,
            Notes = order.Settings.Shrinkage is { } shrinkage
                ? [done.Document.Photo!.File, FormattableString.Invariant($"enlarged for {100 * shrinkage.Share:0.###} % of shrinkage")]
                : [done.Document.Photo!.File],
            Unit = order.IsInch ? LengthUnit.Inch : LengthUnit.Millimetre,
        };
    }

    private static string FileName(string stem, DigitisedSection section, DigitisedPhoto photo, int index)
    {
        var isOnlyOne = section.Station is not null && photo.Sections.Count(s => s.Station == section.Station) == 1;
        return isOnlyOne
            ? FormattableString.Invariant($"{stem}.station-{section.Station}.section.json")
            : FormattableString.Invariant($"{stem}.{(section.IsOpening ? "opening" : "slice")}-{index + 1}.section.json");
    }

    /// <summary>Names for the results: the photo's own, numbered where two folders hold photos of one name.</summary>
    private static string[] UniqueStems(IReadOnlyList<string> photos)
    {
        var seen = new Dictionary<string, int>(StringComparer.OrdinalIgnoreCase);
        return [.. photos.Select(photo =>
        {
            var stem = Path.GetFileNameWithoutExtension(photo);
            var count = seen[stem] = seen.GetValueOrDefault(stem) + 1;
            return count == 1 ? stem : FormattableString.Invariant($"{stem}-{count}");
        })];
    }
}
