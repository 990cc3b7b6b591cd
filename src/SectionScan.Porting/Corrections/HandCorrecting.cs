using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Documents;

namespace SectionScan.Porting.Corrections;

/// <summary>Corrections by hand to a section that came from a photo. Each gives a new document, records itself in it and widens the
/// uncertainty where it was made.</summary>
/// <remarks>The uncertainty of a place that a hand chose: the hand's own, and what lies between the automatic place and the hand's; the
/// truth may lie anywhere between the two, so a rectangular distribution (JCGM 100:2008, 4.3.7) of that width, move/√12.</remarks>
public static class HandCorrecting
{
    /// <summary>The cause of error that corrections add to.</summary>
    public const string SourceName = "correction by hand";

    private const double FarthestMm = 3;
    private const double SpacingMm = 0.12;

    // A roof direction set by eye is good to about a degree (common practice, no source).
    private const double UpUncertaintyRad = 0.01;

    /// <summary>Draws the outline from one place to another; its neighbours follow, less and less along the edge.</summary>
    /// <param name="document">The section.</param>
    /// <param name="from">A place on the outline or close to it, mm, section frame.</param>
    /// <param name="to">Where the edge lies there, mm, section frame.</param>
    /// <param name="reachMm">How far along the edge the neighbours follow, mm.</param>
    /// <param name="handMm">Standard uncertainty of the hand's place, mm.</param>
    public static Result<SectionDocument> MovePoint(SectionDocument document, SectionPoint from, SectionPoint to, double reachMm, double handMm)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(reachMm);
        var outline = document.Section.Outline;
        var at = OutlineStretch.Nearest(outline, from);
        if (outline[at].DistanceTo(from) is var distance && distance > FarthestMm)
        {
            return CorrectionProblems.FarFromOutline(distance);
        }

        var (moveX, moveY) = (to.XMm - outline[at].XMm, to.YMm - outline[at].YMm);
        var moved = outline.Points.ToArray();
        foreach (var direction in new[] { 1, -1 })
        {
            var along = 0.0;
            for (var i = direction > 0 ? 0 : -1; Math.Abs(i) < outline.Count / 2 && along < reachMm; i += direction)
            {
                along = i == 0 ? 0 : along + outline[at + i].DistanceTo(outline[at + i - direction]);
                var share = Math.Max(0, 1 - (along * along / (reachMm * reachMm)));
                var (index, weight) = (OutlineStretch.Index(outline, at + i), share * share);
                moved[index] = new(outline[at + i].XMm + (weight * moveX), outline[at + i].YMm + (weight * moveY));
            }
        }

        var largest = Math.Sqrt((moveX * moveX) + (moveY * moveY));
        return Remade(document, moved, new("move-point", outline[at].XMm, outline[at].YMm, largest, U(handMm, largest)), outline[at], reachMm);
    }

    /// <summary>Replaces a stretch of the outline by a smooth curve through places along the edge.</summary>
    /// <param name="document">The section.</param>
    /// <param name="path">Two places or more, the first and the last close to the outline, mm, section frame.</param>
    /// <param name="handMm">Standard uncertainty of the hand's places, mm.</param>
    public static Result<SectionDocument> RedrawStretch(SectionDocument document, IReadOnlyList<SectionPoint> path, double handMm)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentNullException.ThrowIfNull(path);
        if (path.Count < 2)
        {
            return CorrectionProblems.TooFewPlaces(2);
        }

        var outline = document.Section.Outline;
        foreach (var end in new[] { path[0], path[^1] })
        {
            if (outline[OutlineStretch.Nearest(outline, end)].DistanceTo(end) is var distance && distance > FarthestMm)
            {
                return CorrectionProblems.FarFromOutline(distance);
            }
        }

        return OutlineStretch.Between(outline, path) is { } stretch
            ? Replaced(document, stretch, OutlineStretch.Smooth(stretch.IsTurnedRound ? [.. path.Reverse()] : path, SpacingMm), "redraw-stretch", handMm)
            : CorrectionProblems.StretchTooLong();
    }

    /// <summary>Leaves out a bubble or a burr: the edge goes on fairly from one side of it to the other.</summary>
    /// <param name="document">The section.</param>
    /// <param name="at">The middle of the bubble, mm, section frame.</param>
    /// <param name="radiusMm">How far it reaches, mm.</param>
    /// <param name="handMm">Standard uncertainty of the hand's place, mm.</param>
    public static Result<SectionDocument> ExcludeBubble(SectionDocument document, SectionPoint at, double radiusMm, double handMm)
    {
        ArgumentNullException.ThrowIfNull(document);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radiusMm);
        var outline = document.Section.Outline;
        var nearest = OutlineStretch.Nearest(outline, at);
        if (outline[nearest].DistanceTo(at) is var distance && distance > radiusMm)
        {
            return CorrectionProblems.FarFromOutline(distance);
        }

        return OutlineStretch.Within(outline, nearest, at, radiusMm) is { } stretch
            ? Replaced(document, stretch, OutlineStretch.Fair(outline, stretch, SpacingMm), "exclude-bubble", handMm)
            : CorrectionProblems.StretchTooLong();
    }

    /// <summary>Turns the section's up.</summary>
    /// <param name="document">The section.</param>
    /// <param name="by">By how much, counter-clockwise as seen on the photo.</param>
    public static Result<SectionDocument> TurnUp(SectionDocument document, Angle by)
    {
        ArgumentNullException.ThrowIfNull(document);
        if (document.Placement is not { } placement)
        {
            return CorrectionProblems.NoPhoto();
        }

        var back = Angle.FromRadians(-by.Radians);
        var sources = document.Section.ErrorSources.Where(each => each.Name != "up direction")
            .Select(each => each with { Effects = [.. each.Effects.Select(effect => EffectMotion.Turned(effect, back))] })
            .Append(new("up direction", [new LinearEffect(0, -UpUncertaintyRad, UpUncertaintyRad, 0)], IsAssumed: true));
        return (document with
        {
            Section = document.Section with { Outline = document.Section.Outline.Turned(back), ErrorSources = [.. sources] },
            Marks = document.Marks.Mapped(p => Turned(p, back)),
            Placement = placement with { Up = Angle.FromRadians(placement.Up.Radians + by.Radians) },
            Corrections = [.. document.Corrections, new("turn-up", 0, 0, by.Degrees, UpUncertaintyRad)],
        }).Rounded();
    }

    /// <summary>Tells the station; null for none.</summary>
    public static Result<SectionDocument> SetStation(SectionDocument document, int? station)
    {
        ArgumentNullException.ThrowIfNull(document);
        return document with
        {
            Section = document.Section with { Station = station },
            Corrections = [.. document.Corrections, new("set-station", 0, 0, station ?? 0, 0)],
        };
    }

    private static double U(double handMm, double moveMm) => double.Hypot(handMm, moveMm / Math.Sqrt(12));

    private static Result<SectionDocument> Replaced(
        SectionDocument document, OutlineStretch stretch, IReadOnlyList<SectionPoint> course, string kind, double handMm)
    {
        var outline = document.Section.Outline;
        var largest = stretch.LargestDistanceMm(outline, course);
        var middle = outline[stretch.First + (stretch.Count / 2)];
        var reach = SpacingMm + Enumerable.Range(stretch.First, stretch.Count).Max(i => outline[i].DistanceTo(middle));
        var kept = Enumerable.Range(stretch.First + stretch.Count, outline.Count - stretch.Count).Select(i => outline[i]);
        return Remade(document, [.. course, .. kept], new(kind, middle.XMm, middle.YMm, largest, U(handMm, largest)), middle, reach);
    }

    /// <summary>The document with another outline, its origin at the centroid again, and the correction in it.</summary>
    private static Result<SectionDocument> Remade(
        SectionDocument document, IReadOnlyList<SectionPoint> points, HandCorrection correction, SectionPoint place, double reachMm)
    {
        if (document.Placement is not { } placement || document.PlacedOutline.Count == 0)
        {
            return CorrectionProblems.NoPhoto();
        }

        // A mould that shrank: the outline is larger than what lay on the paper.
        var enlarged = Enlargement(document);
        return Outline.From(points, "correction").Then(rough => Outline.From(rough.Resampled(document.Section.Outline.Count), "correction")).Then(even =>
        {
            var centroid = PolygonMoments.Of(even.Points).Centroid;
            var centred = even.Moved(-centroid.XMm, -centroid.YMm);
            var placed = placement with { Origin = placement.ToTarget(Shrunk(centroid, enlarged)) };
            var local = new LocalOffsetEffect(correction.StandardUncertainty, place.XMm, place.YMm, reachMm);
            var sources = document.Section.ErrorSources.Where(each => each.Name != SourceName).Append(new(
                SourceName, [.. document.Section.ErrorSources.Where(each => each.Name == SourceName).SelectMany(each => each.Effects), local], IsAssumed: true));
            return (document with
            {
                Section = document.Section with
                {
                    Outline = centred,
                    ErrorSources = [.. sources.Select(each => each with { Effects = [.. each.Effects.Select(e => EffectMotion.Moved(e, -centroid.XMm, -centroid.YMm))] })],
                },
                Placement = placed,
                Marks = document.Marks.Mapped(p => new(p.XMm - centroid.XMm, p.YMm - centroid.YMm)),
                PlacedOutline = [.. centred.Points.ToArray().Select(p => placed.ToTarget(Shrunk(p, enlarged)))],
                Corrections = [.. document.Corrections, correction],
            }).Rounded("correction");
        });
    }

    /// <summary>How much larger the outline is than what lay on the paper; 1 but for a mould whose shrinkage is made good.</summary>
    public static double Enlargement(SectionDocument document)
    {
        ArgumentNullException.ThrowIfNull(document);
        const double Rounding = 1e-4;
        var paperMm2 = PolygonMoments.SignedAreaMm2([.. document.PlacedOutline.Select(p => new SectionPoint(p.XMm, -p.YMm))]);
        var ratio = paperMm2 == 0 ? 1 : Math.Sqrt(PolygonMoments.Of(document.Section.Outline.Points).AreaMm2 / Math.Abs(paperMm2));
        return Math.Abs(ratio - 1) < Rounding ? 1 : ratio;
    }

    private static SectionPoint Turned(SectionPoint p, Angle by)
    {
        var (sin, cos) = Math.SinCos(by.Radians);
        return new((p.XMm * cos) - (p.YMm * sin), (p.XMm * sin) + (p.YMm * cos));
    }

    private static SectionPoint Shrunk(SectionPoint p, double enlarged) => new(p.XMm / enlarged, p.YMm / enlarged);
}
