using SectionScan.Imaging.Checks;
using SectionScan.Jobs.Digitising;

namespace SectionScan.Jobs.Checking;

/// <summary>The answer to "check" as one document for programs.</summary>
/// <param name="Schema">Its schema's name.</param>
/// <param name="Results">One for each photo.</param>
public sealed record CheckAnswer(string Schema, IReadOnlyList<CheckAnswer.PhotoResult> Results)
{
    /// <summary>The schema's name.</summary>
    public const string SchemaName = "sectionscan/check/1";

    /// <summary>Makes the answer.</summary>
    public static CheckAnswer Of(IEnumerable<CheckOutcome> outcomes) => new(SchemaName, [.. outcomes.Select(PhotoResult.Of)]);

    /// <summary>One photo's result.</summary>
    public sealed record PhotoResult(
        DigitiseAnswer.PhotoPart Photo, CheckVerdict Verdict, DigitiseAnswer.ErrorPart? Error, DigitiseAnswer.TargetPart? Target,
        DigitiseAnswer.CameraPart? Camera, IReadOnlyList<CheckItem> Items)
    {
        internal static PhotoResult Of(CheckOutcome outcome)
        {
            if (outcome.Report is not { } report)
            {
                var problem = outcome.Problem!;
                return new(
                    new(Path.GetFileName(outcome.Path), null, null, null, null, null), CheckVerdict.Poor,
                    new(problem.Code, problem.What, problem.Remedy), null, null, []);
            }

            var photo = report.Photo;
            return new(
                new(photo.File, photo.Sha256, photo.WidthPx, photo.HeightPx, photo.Camera, photo.TakenAt), report.Verdict, null,
                report.Target is { } target ? DigitiseAnswer.TargetPart.Of(target) : null,
                report.Camera is { } camera ? DigitiseAnswer.CameraPart.Of(camera) : null, report.Items);
        }
    }
}
