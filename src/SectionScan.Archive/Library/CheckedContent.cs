using System.Security.Cryptography;
using System.Text;
using SectionScan.Archive.Entries;
using SectionScan.Metrology.Likeness;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;

namespace SectionScan.Archive.Library;

/// <summary>Content that may be kept, with what is derived from its document.</summary>
internal sealed record CheckedContent(
    EntryContent Content,
    string Sha256,
    string? PhotoSha256,
    double AreaMm2,
    double WidthMm,
    double HeightMm,
    byte[] Descriptor)
{
    public static Result<CheckedContent> From(EntryContent content, string reason)
    {
        ArgumentNullException.ThrowIfNull(content);
        ArgumentNullException.ThrowIfNull(reason);
        return EntryRules.TextProblem("reason", reason) is { } unusable
            ? unusable
            : EntryRules.Check(content).Then(tidy =>
                SectionDocumentFormat.Read(tidy.DocumentJson, tidy.Place.Path).Then(document => From(tidy, document)));
    }

    /// <summary>True when a revision holds the same document, notes, tags and numbers.</summary>
    public bool HoldsTheSameAs(EntryRevision revision) =>
        revision.DocumentSha256 == Sha256
        && revision.Content.Notes == Content.Notes
        && revision.Content.Tags.SequenceEqual(Content.Tags)
        && revision.Content.Fields.SequenceEqual(Content.Fields);

    private static Result<CheckedContent> From(EntryContent content, SectionDocument document)
    {
        var points = document.Section.Outline.Points;
        double left = points[0].XMm, right = left, bottom = points[0].YMm, top = bottom;
        foreach (var point in points)
        {
            (left, right) = (Math.Min(left, point.XMm), Math.Max(right, point.XMm));
            (bottom, top) = (Math.Min(bottom, point.YMm), Math.Max(top, point.YMm));
        }

        return new CheckedContent(
            content,
            Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(content.DocumentJson))),
            document.Photo?.Sha256,
            PolygonMoments.Of(points).AreaMm2,
            right - left,
            top - bottom,
            ShapeDescriptor.Of(document.Section.Outline).ToBytes());
    }
}
