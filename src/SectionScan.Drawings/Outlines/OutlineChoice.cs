using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Results;

namespace SectionScan.Drawings.Outlines;

/// <summary>Which of a drawing's lines is the outline, and how large its unit is.</summary>
/// <param name="MmPerUnit">How many mm a drawing unit is; null: as the file states.</param>
/// <param name="Layer">The layer or group that the outline stands in; null: any.</param>
/// <param name="Contour">1 for the largest closed line, 2 for the next; null: there must be one only, or one only on a layer called outline.</param>
/// <param name="GapMm">How far ends of lines may lie apart and still meet, mm.</param>
public sealed record OutlineChoice(double? MmPerUnit = null, string? Layer = null, int? Contour = null, double GapMm = OutlineChoice.UsualGapMm)
{
    /// <summary>The usual gap: drawing programs round to a thousandth of a millimetre or better.</summary>
    public const double UsualGapMm = 0.01;

    private const string OutlineLayer = "outline";
    private const int LeastPoints = 360;
    private const int MostPoints = 20_000;

    /// <summary>Takes the outline out of a drawing. Straight stretches get corners in between, which changes no shape, so that it has
    /// <see cref="LeastPoints"/> or more.</summary>
    /// <param name="file">The drawing.</param>
    /// <param name="where">Its file, for the message of a refusal.</param>
    /// <returns>The outline in mm with the number of lines that were left open; or one of <see cref="OutlineFileProblems"/> or of the
    /// outline itself.</returns>
    public Result<ChosenOutline> Take(DrawnFile file, string where)
    {
        ArgumentNullException.ThrowIfNull(file);
        if ((MmPerUnit ?? file.MmPerUnit) is not { } scale)
        {
            return OutlineFileProblems.NoUnit(where);
        }

        var lines = file.Lines.Where(line => Layer is null || line.Layer.Equals(Layer, StringComparison.OrdinalIgnoreCase)).ToList();
        if (lines.Count == 0 && Layer is not null && file.Lines.Count > 0)
        {
            var layers = string.Join(", ", file.Lines.Select(line => $"\"{line.Layer}\"").Distinct().Take(12));
            return OutlineFileProblems.NoSuchOutline(where, $"The drawing has no line on a layer \"{Layer}\"; it has {layers}.");
        }

        return LineJoining.Join(lines, GapMm / scale, where).Then(joined => Choose(joined, scale, where));
    }

    private Result<ChosenOutline> Choose(IReadOnlyList<DrawnLine> joined, double scale, string where)
    {
        var closed = joined.Where(line => line.IsClosed && line.Points.Count > 2)
            .Select(line => (Line: line, AreaMm2: Math.Abs(PolygonMoments.SignedAreaMm2(line.Points.ToArray())) * scale * scale))
            .Where(each => each.AreaMm2 > 0).OrderByDescending(each => each.AreaMm2).ToList();
        var open = joined.Where(line => !line.IsClosed).ToList();
        if (closed.Count == 0)
        {
            var nearest = open.Where(line => line.Points.Count > 2).OrderBy(Gap).FirstOrDefault();
            return OutlineFileProblems.NoOutline(
                where, open.Count, nearest is null ? null : Gap(nearest) * scale, nearest is null ? 0 : nearest.Points[0].XMm * scale, nearest is null ? 0 : nearest.Points[0].YMm * scale);
        }

        if (Contour > closed.Count)
        {
            return OutlineFileProblems.NoSuchOutline(where, FormattableString.Invariant($"There is no contour {Contour}: the drawing holds {closed.Count} closed."));
        }

        // A layer of that name is the outline, and the rest dimensions and letters: so our own drawings have it, and many others.
        var named = Contour is null ? closed.FindAll(each => each.Line.Layer.Equals(OutlineLayer, StringComparison.OrdinalIgnoreCase)) : [];
        if (named.Count == 1)
        {
            closed = named;
        }

        if (Contour is null && closed.Count > 1)
        {
            return OutlineFileProblems.SeveralOutlines(where, closed.ConvertAll(each => (each.Line.Layer, each.AreaMm2)));
        }

        var chosen = closed[(Contour ?? 1) - 1].Line;
        if (chosen.Points.Count > MostPoints)
        {
            return OutlineFileProblems.TooManyPoints(where, MostPoints);
        }

        return Outline.From(Filled([.. chosen.Points.Select(p => new SectionPoint(p.XMm * scale, p.YMm * scale))]), where)
            .Then<ChosenOutline>(outline => new ChosenOutline(outline, chosen.Layer, open.Count, scale));
    }

    private static double Gap(DrawnLine line) => line.Points[0].DistanceTo(line.Points[^1]);

    private static List<SectionPoint> Filled(SectionPoint[] corners)
    {
        if (corners.Length >= LeastPoints)
        {
            return [.. corners];
        }

        var perimeter = 0.0;
        for (var i = 0; i < corners.Length; i++)
        {
            perimeter += corners[i].DistanceTo(corners[(i + 1) % corners.Length]);
        }

        var filled = new List<SectionPoint>();
        for (var i = 0; i < corners.Length; i++)
        {
            var (from, to) = (corners[i], corners[(i + 1) % corners.Length]);
            var parts = Math.Max(1, (int)Math.Ceiling(from.DistanceTo(to) * LeastPoints / perimeter));
            for (var k = 0; k < parts; k++)
            {
                var share = (double)k / parts;
                filled.Add(new(from.XMm + (share * (to.XMm - from.XMm)), from.YMm + (share * (to.YMm - from.YMm))));
            }
        }

        return filled;
    }
}

/// <summary>An outline taken out of a drawing.</summary>
/// <param name="Outline">The outline, mm, as it stands in the drawing, y up.</param>
/// <param name="Layer">Its layer.</param>
/// <param name="LinesLeftOpen">How many lines beside it are not closed and were left out.</param>
/// <param name="MmPerUnit">How many mm a drawing unit was taken as.</param>
public sealed record ChosenOutline(Outline Outline, string Layer, int LinesLeftOpen, double MmPerUnit);
