using System.Globalization;
using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;
using SectionScan.Porting.Judgements;

namespace SectionScan.Porting.Joints;

/// <summary>Matches a manifold to a port: places it as well as the joint's freedom allows, tells the step round the joint and what to cut
/// so that no edge faces the flow.</summary>
/// <remarks>The gas meets an edge where the downstream part stands inside the upstream part's opening; only the downstream part can be cut
/// to take it away. Where the downstream opening is the wider one, a step remains that the gas leaves behind (common practice, no
/// source: it is often left on purpose against reversion).</remarks>
public static class JointMatching
{
    /// <summary>Openings whose middles cannot be brought nearer than this deserve a word, mm (common practice, no source).</summary>
    private const double LargestSpacingErrorMm = 0.5;

    /// <summary>Matches a joint.</summary>
    /// <returns>The match, or one of <see cref="JointProblems"/>.</returns>
    public static Result<JointMatch> Match(JointOrder order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var (port, manifold) = (order.Port.WithFlow, order.Manifold.WithFlow);
        if (!Place(order, port, manifold).TryGet(out var placement, out var problem))
        {
            return problem;
        }

        JointFace? gasket = null;
        if (order.Gasket is { } given)
        {
            if (!Place(order with { Freedom = order.Freedom with { Pivot = null } }, port, given.WithFlow).TryGet(out var lay, out problem))
            {
                return problem;
            }

            gasket = given.WithFlow;
            gasket = gasket with { Openings = [.. gasket.Openings.Select(opening => opening.Moved(lay.Transform))] };
        }

        var openings = new List<OpeningMatch>();
        for (var k = 0; k < port.Openings.Count; k++)
        {
            var moved = manifold.Openings[k].Moved(placement.Transform);
            if (OpeningMatching.Of(order, port.Openings[k], moved, gasket?.Openings[k]) is not { } opening)
            {
                return JointProblems.OpeningsApart(port.Openings[k].Name);
            }

            openings.Add(opening);
        }

        var all = openings.SelectMany(opening => new[] { opening.Port, opening.Manifold }).ToList();
        var u = all.Any(opening => opening.ErrorSources.Count == 0)
            ? null
            : PlacementUncertainty.Of([.. all.Select(opening => (opening.Outline, opening.ErrorSources))], placement.Middle);
        return new JointMatch(
            order, placement, u, openings, port.Studs, [.. manifold.Studs.Select(placement.Transform.Apply)],
            Warnings(order, port, manifold, placement));
    }

    private static Result<PlacedPattern> Place(JointOrder order, JointFace port, JointFace moved)
    {
        var freedom = order.Freedom;
        foreach (var face in new[] { port, moved })
        {
            if (face.Openings.Count == 0)
            {
                return JointProblems.NoOpening(face.Name);
            }
        }

        if (moved.Openings.Count != port.Openings.Count)
        {
            return JointProblems.OpeningsDiffer(moved.Name, moved.Openings.Count, port.Name, port.Openings.Count);
        }

        if (freedom.ClearanceMm is null != (port.Studs.Count == 0))
        {
            return JointProblems.ClearanceWithoutStuds(port.Name);
        }

        // A gasket whose holes are not told is laid by its openings alone.
        var isByStuds = port.Studs.Count > 0 && !(moved.Studs.Count == 0 && moved.Name == order.Gasket?.Name);
        if (isByStuds && moved.Studs.Count != port.Studs.Count)
        {
            return JointProblems.StudsDiffer(moved.Name, moved.Studs.Count, port.Name, port.Studs.Count);
        }

        var middles = PatternPlacement.Start([.. port.Centroids.Zip(moved.Centroids)]);
        var (start, plays) = (middles, new List<PlacePlay>());
        if (isByStuds)
        {
            var play = freedom.ClearanceMm!.Value / 2;
            start = PatternPlacement.Start([.. port.Studs.Zip(moved.Studs)]);
            var mismatch = port.Studs.Zip(moved.Studs).Max(pair => start.Apply(pair.Second).DistanceTo(pair.First));
            if (mismatch > play)
            {
                return JointProblems.StudsDoNotFit(moved.Name, mismatch, play);
            }

            plays.AddRange(port.Studs.Zip(moved.Studs, (stud, hole) => new PlacePlay(stud, hole, play)));
        }
        else if (freedom.Pivot is { } pivot)
        {
            var (at, own) = (order.Port.WithFlowAt(pivot.Port), order.Manifold.WithFlowAt(pivot.Manifold));
            var lay = middles.Apply(own);
            start = middles with { XMm = middles.XMm + at.XMm - lay.XMm, YMm = middles.YMm + at.YMm - lay.YMm };
            plays.Add(new(at, own, 0));
        }

        var limits = new PlacementLimits { MostShiftMm = freedom.MostShiftMm, MostTurn = freedom.MostTurn, Plays = plays };
        return PatternPlacement.Fit(
            [.. port.Openings.Zip(moved.Openings, (fixedOne, movedOne) => new OutlinePair(fixedOne.Outline, movedOne.Outline))], start, limits);
    }

    private static List<Wording> Warnings(JointOrder order, JointFace port, JointFace manifold, PlacedPattern placement)
    {
        var warnings = new List<Wording>();
        if (placement.IsAtLimit && order.Freedom.Pivot is null)
        {
            warnings.Add("The manifold would lie better a little farther on, but the joint's freedom ends there.");
        }

        var apart = port.Centroids.Zip(manifold.Centroids, (at, own) => placement.Transform.Apply(own).DistanceTo(at)).Max();
        if (port.Openings.Count > 1 && apart > LargestSpacingErrorMm)
        {
            warnings.Add(new(unit =>
                $"At one opening the middles stay {unit.Length(apart)} apart: the openings are spaced differently on the two parts, or one is much wider to one side."));
        }

        if (Math.Abs(placement.Turn.Degrees) > 20)
        {
            warnings.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"The manifold was turned by {placement.Turn.Degrees:0}° from its start. Check that the roof is up on both faces, and which way each is seen."));
        }

        return warnings;
    }
}
