using SectionScan.Metrology.Capture;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Corrections;
using SectionScan.Porting.Sections;
using SectionScan.Porting.TargetShapes;

namespace SectionScan.Porting.Documents;

/// <summary>From the fields of a document to the document.</summary>
internal static class SectionDocumentReader
{
    private const int MostWarnings = 1000;
    private const int MostErrorSources = 200;
    private const int MostCorrections = 1000;
    private const double ThickestMm = 1000;

    public static Result<SectionDocument> Read(DocumentFieldReader reader, DocumentField top)
    {
        var program = reader.Text(reader.Member(top, "program"));
        var station = reader.Member(top, "station") is { IsNull: false } numbered ? reader.Count(numbered) : (int?)null;
        var subject = Subject(reader, reader.Member(top, "subject"));
        var thicknessMm = Thickness(reader, reader.Member(top, "thicknessMm"));
        var warnings = reader.Items(reader.Member(top, "warnings"), MostWarnings).Select(reader.Text).ToList();
        var photo = reader.Member(top, "photo") is { IsNull: false } taken ? reader.Facts<PhotoFacts>(taken) : null;
        var target = reader.Member(top, "target") is { IsNull: false } found ? Target(reader, found) : null;
        var camera = reader.Member(top, "camera") is { IsNull: false } stood ? reader.Facts<CameraFacts>(stood) : null;
        var settings = Settings(reader, reader.Member(top, "settings"));
        var sources = reader.Items(reader.Member(top, "errorSources"), MostErrorSources).Select(each => Source(reader, each)).ToList();
        var corrections = top.Optional("corrections") is { } byHand
            ? reader.Items(byHand, MostCorrections).Select(reader.Facts<HandCorrection>).OfType<HandCorrection>().ToList()
            : [];
        var placement = reader.Member(top, "placement") is { IsNull: false } lay ? Placement(reader, lay) : null;
        var outline = Points(reader, reader.Member(top, "outline"));
        var placed = Points(reader, reader.Member(top, "placedOutline")).Select(p => new TargetPoint(p.X, p.Y)).ToList();
        var marks = top.Optional("marks") is { IsNull: false } marked ? SectionMarksFields.Read(reader, marked) : SectionMarks.None;
        var shape = top.Optional("targetShape") is { IsNull: false } settled ? reader.Facts<TargetShapeFacts>(settled) : null;
        if (reader.FirstProblem is { } problem)
        {
            return problem;
        }

        return Outline.From(outline.Select(p => new SectionPoint(p.X, p.Y)), reader.Where).Then<SectionDocument>(polygon => new SectionDocument(
            new(station, subject, thicknessMm, polygon, sources, warnings), placement, placed, photo, target, camera, settings, program)
        {
            Marks = marks,
            Corrections = corrections,
            TargetShape = shape,
        });
    }

    private static SectionSubject Subject(DocumentFieldReader reader, DocumentField field)
    {
        switch (reader.Text(field))
        {
            case "mould":
                return SectionSubject.Mould;
            case "opening":
                return SectionSubject.Opening;
            case "target":
                return SectionSubject.Target;
            default:
                reader.Unusable(field, "\"mould\", \"opening\" or \"target\"");
                return default;
        }
    }

    private static double Thickness(DocumentFieldReader reader, DocumentField field)
    {
        var thicknessMm = reader.Number(field);
        if (thicknessMm is < 0 or > ThickestMm)
        {
            reader.Unusable(field, $"between 0 and {ThickestMm} mm");
        }

        return thicknessMm;
    }

    private static List<(double X, double Y)> Points(DocumentFieldReader reader, DocumentField field) =>
        [.. reader.Items(field, SectionDocumentFormat.MaximumPoints).Select(reader.Pair)];

    private static TargetFit Target(DocumentFieldReader reader, DocumentField field)
    {
        var (ratioX, ratioY) = reader.Pair(reader.Member(field, "printRatio"));
        return new(
            reader.Text(reader.Member(field, "kind")),
            reader.Count(reader.Member(field, "cornersFound")),
            reader.Count(reader.Member(field, "cornersExpected")),
            reader.Number(reader.Member(field, "rmsPx")),
            ratioX,
            ratioY);
    }

    private static SectionPlacement Placement(DocumentFieldReader reader, DocumentField field)
    {
        var (x, y) = reader.Pair(reader.Member(field, "origin"));
        return new(new(x, y), Angle.FromDegrees(reader.Number(reader.Member(field, "upDeg"))));
    }

    private static SortedDictionary<string, string> Settings(DocumentFieldReader reader, DocumentField field)
    {
        var settings = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var (name, value) in reader.Members(field))
        {
            settings[name] = reader.Text(value);
        }

        return settings;
    }

    private static OutlineErrorSource Source(DocumentFieldReader reader, DocumentField field)
    {
        var effects = reader.Items(reader.Member(field, "effects"), MostErrorSources).Select(reader.Facts<OutlineEffect>).OfType<OutlineEffect>();
        return new(reader.Text(reader.Member(field, "name")), [.. effects], reader.Flag(reader.Member(field, "isAssumed")));
    }
}
