using System.Globalization;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Results;
using SectionScan.Porting.Documents;
using SectionScan.Porting.Sections;
using SectionScan.Porting.TargetShapes;
using SectionScan.Porting.Walls;

namespace SectionScan.Jobs.TargetShapes;

/// <summary>A target shape for one station.</summary>
/// <param name="Own">The port's own section.</param>
/// <param name="Reference">The section worked toward.</param>
/// <param name="LaidReference">The reference as it was laid on the own section, before any change of size.</param>
/// <param name="Shape">The target.</param>
/// <param name="Document">The target as a section document.</param>
public sealed record SettledTarget(
    SectionInput Own, SectionInput Reference, AlignedOutline LaidReference, TargetShape Shape, SectionDocument Document)
{
    /// <summary>A reference farther away than this is of another station or lies another way up, mm.</summary>
    private const double FarthestMm = 10;

    /// <summary>The name of the target's file, without ending: "station-4.target".</summary>
    public string Name => Own.Station is { } station
        ? string.Create(CultureInfo.InvariantCulture, $"station-{station}.target") : $"{Own.Name}.target";

    /// <summary>Settles a target.</summary>
    public static Result<SettledTarget> Of(SectionInput own, SectionInput reference, TargetShapeChoice choice)
    {
        ArgumentNullException.ThrowIfNull(choice);
        return Lay(own, reference, choice.Alignment).Then(laid => Of(own, reference, laid, choice));
    }

    /// <summary>Lays the reference on the own section, which takes far longer than the rest and does not depend on shares and limits.</summary>
    /// <param name="own">The port's own section.</param>
    /// <param name="reference">The section worked toward.</param>
    /// <param name="alignment">How.</param>
    public static Result<AlignedOutline> Lay(SectionInput own, SectionInput reference, AlignmentChoice alignment)
    {
        ArgumentNullException.ThrowIfNull(own);
        ArgumentNullException.ThrowIfNull(reference);
        if (!own.LaidOnMe(reference, alignment).TryGet(out var laid, out var problem))
        {
            return problem;
        }

        var farthest = HausdorffDistance.Between(own.Outline, laid.Outline);
        if (farthest > FarthestMm)
        {
            return TargetShapeProblems.TooFarApart($"{reference.Name} on {own.Name}", farthest, FarthestMm);
        }

        return laid;
    }

    /// <summary>Settles a target between the own section and a reference that is laid on it already.</summary>
    /// <param name="own">The port's own section.</param>
    /// <param name="reference">The section worked toward.</param>
    /// <param name="laid">The same as <see cref="Lay"/> laid it.</param>
    /// <param name="choice">What is chosen.</param>
    public static Result<SettledTarget> Of(SectionInput own, SectionInput reference, AlignedOutline laid, TargetShapeChoice choice)
    {
        ArgumentNullException.ThrowIfNull(own);
        ArgumentNullException.ThrowIfNull(reference);
        ArgumentNullException.ThrowIfNull(laid);
        ArgumentNullException.ThrowIfNull(choice);
        if (!choice.Walls.At(own.Station, own.Outline).TryGet(out var behind, out var problem))
        {
            return problem with { Where = $"{own.Name} ({problem.Where})" };
        }

        var order = new TargetShapeOrder(own.Outline, laid.Outline, choice.Shares)
        {
            ReferenceScale = choice.Valve is { } valve ? valve.ToMm / valve.FromMm : 1,
            Wanted = choice.Wanted,
            Widening = choice.WidenMm > 0 ? new(choice.WidenMm, GuideHeight(own, choice), GuideWidening.UsualReachMm) : null,
            Limits = choice.Limits,
            Clearances = [.. choice.Clearances, .. behind.Select(Kept)],
            FairingMm = choice.FairingMm,
        };
        if (!TargetShaping.Shape(order).TryGet(out var shape, out problem))
        {
            return problem with { Where = $"{own.Name} toward {reference.Name}" };
        }

        return DocumentOf(own, reference, laid, shape, order, choice).Rounded(own.Name)
            .Then<SettledTarget>(document => new SettledTarget(own, reference, laid, shape, document));
    }

    private static Clearance Kept(KeepOut keepOut)
    {
        var certain = string.Create(
            CultureInfo.InvariantCulture, $"a wall of {keepOut.LimitMm:0.##} mm and twice u = {keepOut.PlaceStandardUncertaintyMm:0.##} mm of its place");
        return new(
            keepOut.Name, keepOut.Shape, keepOut.LimitMm + (2 * keepOut.PlaceStandardUncertaintyMm),
            keepOut.Note.Length == 0 ? certain : $"{keepOut.Note}; {certain}");
    }

    private static SectionDocument DocumentOf(
        SectionInput own, SectionInput reference, AlignedOutline laid, TargetShape shape, TargetShapeOrder order, TargetShapeChoice choice)
    {
        var motion = laid.Transform;
        var facts = new TargetShapeFacts(
            new(own.Name, own.Sha256), new(reference.Name, reference.Sha256),
            new(motion.XMm, motion.YMm, motion.Turn.Degrees, motion.Scale, motion.IsMirrored),
            Steps(own, reference, shape, order, choice),
            [.. choice.Shares.Values.Select((share, i) => new SectorShare(RegionWords.Of((OutlineRegion)i), share))],
            shape.Limits);
        return new(
            new(own.Station, SectionSubject.Target, 0, shape.Outline, [], Warnings(own, choice)), null, [], null, null, null, choice.SettingsInWords, choice.Program)
        {
            TargetShape = facts,
            Marks = own.Marks,
        };
    }

    private static List<string> Steps(
        SectionInput own, SectionInput reference, TargetShape shape, TargetShapeOrder order, TargetShapeChoice choice)
    {
        var steps = new List<string>
        {
            $"{reference.Name} was laid on {own.Name} ({AlignmentWords.Of(choice.Alignment)}); the target lies in the frame of {own.Name}.",
        };
        if (shape.ReferenceScale != 1)
        {
            var why = order.Wanted is { } wanted
                ? $"so that the target's {Word(wanted.Kind)} is {Measure(wanted.Kind, wanted.Value)}"
                : string.Create(CultureInfo.InvariantCulture, $"for a valve of {choice.Valve!.Value.ToMm:0.##} mm instead of {choice.Valve.Value.FromMm:0.##} mm");
            steps.Add(string.Create(CultureInfo.InvariantCulture, $"The reference was scaled by {shape.ReferenceScale:0.0000} about its centroid, {why}."));
        }

        if (shape.Missed is { } missed)
        {
            steps.Add($"The {Word(order.Wanted!.Value.Kind)} wanted could not be reached: limits, shares and the own metal allow {Measure(order.Wanted.Value.Kind, missed)}.");
        }

        steps.Add($"Toward the reference: {Shares(choice.Shares)}; smooth from the middle of one sector to the middle of the next.");
        if (SectorBlends.InWords(own.Outline, shape.Outline, choice.Shares) is { } blends)
        {
            steps.Add(blends);
        }

        if (order.Widening is { } widening)
        {
            steps.Add(string.Create(CultureInfo.InvariantCulture, $"Wider by {widening.TotalMm:0.##} mm beside the guide, at a height of {widening.AtYMm:0.0} mm, dying away over {widening.ReachMm:0.#} mm."));
        }

        steps.Add(order.FairingMm > 0
            ? string.Create(CultureInfo.InvariantCulture, $"Waves shorter than {order.FairingMm:0.#} mm were faired out, which moved the wall by {shape.LargestFairingMm:0.00} mm at most.")
            : "Not faired.");
        return steps;
    }

    private static List<string> Warnings(SectionInput own, TargetShapeChoice choice)
    {
        var facts = PolygonFacts.Of(own.Outline);
        return [.. choice.Limits.Select(limit => (Limit: limit, Own: limit.Kind switch
        {
            LimitedMeasure.Width => MeasureCatalogue.Width.Definition(facts),
            LimitedMeasure.Height => MeasureCatalogue.Height.Definition(facts),
            _ => MeasureCatalogue.Area.Definition(facts),
        })).Where(each => each.Own > each.Limit.Most).Select(each =>
            $"The {Word(each.Limit.Kind)} of the own port, {Measure(each.Limit.Kind, each.Own)}, is over the limit of {Measure(each.Limit.Kind, each.Limit.Most)} already.")];
    }

    private static double GuideHeight(SectionInput own, TargetShapeChoice choice)
    {
        if (choice.WidenAtYMm is { } given)
        {
            return given;
        }

        var points = own.Outline.Points.ToArray();
        return own.Marks.GuideAxis?.Middle.YMm ?? (points.MaxBy(p => p.XMm).YMm + points.MinBy(p => p.XMm).YMm) / 2;
    }

    private static string Shares(SectorShares shares)
    {
        var groups = shares.Values.Select((share, i) => (Share: share, Name: RegionWords.Of((OutlineRegion)i)))
            .GroupBy(each => each.Share).OrderBy(group => group.Count()).ToList();
        return string.Join("; ", groups.Select((group, i) => string.Create(CultureInfo.InvariantCulture, $"{100 * group.Key:0.#} % ")
            + (groups.Count == 1 ? "all round" : i == groups.Count - 1 ? "elsewhere" : string.Join(", ", group.Select(each => each.Name)))));
    }

    private static string Word(LimitedMeasure kind) => kind switch
    {
        LimitedMeasure.Width => "width",
        LimitedMeasure.Height => "height",
        _ => "area",
    };

    private static string Measure(LimitedMeasure kind, double value) => kind == LimitedMeasure.Area
        ? string.Create(CultureInfo.InvariantCulture, $"{value:0.0} mm²")
        : string.Create(CultureInfo.InvariantCulture, $"{value:0.00} mm");
}
