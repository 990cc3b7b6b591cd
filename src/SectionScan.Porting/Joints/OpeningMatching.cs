using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Outlines;
using SectionScan.Metrology.Quantities;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Joints;

/// <summary>The steps and cuts of one opening of a joint that has been placed.</summary>
internal static class OpeningMatching
{
    /// <summary>The spacing of the places at which steps are taken, mm.</summary>
    private const double SpacingMm = 0.25;

    /// <summary>Shorter stretches than this many places are a graze, not an edge.</summary>
    private const int FewestPlaces = 3;

    public static OpeningMatch? Of(JointOrder order, JointOpening port, JointOpening manifold, JointOpening? gasket)
    {
        var downstreamIsPort = order.Flow == JointFlow.Intake;
        if (OutlineUnion.Of(port.Outline, manifold.Outline) is not { } cutTo)
        {
            return null;
        }

        var steps = OutlineComparison.Samples(port.Outline, manifold.Outline, SpacingMm);
        var u = StepUncertainty(port, manifold);
        var limit = Math.Max(order.AllowedStepMm, Estimate.CoverageFactor * KnownUncertainty(port, manifold));
        var stretches = Stretches(steps, limit, PolygonFacts.Of(port.Outline).PerimeterMm / steps.Count, downstreamIsPort);
        var (portArea, manifoldArea) = (Area(port), Area(manifold));
        var downstream = downstreamIsPort ? portArea : manifoldArea;
        var cutToMm2 = PolygonMoments.Of(cutTo.Points).AreaMm2;
        var cutMm = stretches.Where(stretch => stretch.IsFacingFlow).Sum(stretch => stretch.LengthMm);
        return new(
            port, manifold, steps, u, limit, stretches, cutTo, portArea, manifoldArea,
            new(cutToMm2, double.Hypot(portArea.StandardUncertainty, manifoldArea.StandardUncertainty)),
            new(cutToMm2 - downstream.Value, double.IsNaN(u) ? 0 : u * cutMm),
            gasket is null ? null : Gasket(order, cutTo, gasket, KnownUncertainty(port, manifold)));
    }

    private static GasketMatch Gasket(JointOrder order, Outline cutTo, JointOpening gasket, double cutToU) => new(
        gasket.Outline,
        OutlineComparison.Samples(cutTo, gasket.Outline, SpacingMm),
        Math.Max(order.AllowedStepMm, Estimate.CoverageFactor * double.Hypot(cutToU, KnownUncertainty(gasket))));

    private static double StepUncertainty(JointOpening port, JointOpening manifold) =>
        port.ErrorSources.Count == 0 || manifold.ErrorSources.Count == 0 ? double.NaN : KnownUncertainty(port, manifold);

    /// <summary>u of what is known of the openings' walls; an outline without error sources adds nothing.</summary>
    private static double KnownUncertainty(params ReadOnlySpan<JointOpening> openings)
    {
        var u = 0.0;
        foreach (var opening in openings)
        {
            u = double.Hypot(u, WallUncertainty.Of(opening.Outline, opening.ErrorSources));
        }

        return u;
    }

    private static Estimate Area(JointOpening opening) =>
        MeasuredOutline.Of(opening.Outline, opening.ErrorSources, [MeasureCatalogue.Area])[MeasureCatalogue.Area].Estimate;

    private static List<JointStretch> Stretches(IReadOnlyList<DeviationSample> steps, double limitMm, double spacingMm, bool downstreamIsPort)
    {
        var stretches = new List<JointStretch>();
        var count = steps.Count;
        var begin = Enumerable.Range(0, count).FirstOrDefault(i => SignAt(i) != SignAt(i - 1), -1);
        if (begin < 0)
        {
            begin = 0;
        }

        for (var i = 0; i < count;)
        {
            var sign = SignAt(begin + i);
            var length = 1;
            while (i + length < count && SignAt(begin + i + length) == sign)
            {
                length++;
            }

            if (sign != 0 && length >= FewestPlaces)
            {
                var run = Enumerable.Range(begin + i, length).Select(k => steps[k % count]).ToList();
                var side = sign > 0 ? JointSide.Port : JointSide.Manifold;
                stretches.Add(new(
                    side, (side == JointSide.Port) == downstreamIsPort, run[0], run[^1], run.MaxBy(sample => sign * sample.DeviationMm)!,
                    length * spacingMm, run.Average(sample => sample.DeviationMm)));
            }

            i += length;
        }

        return stretches;

        int SignAt(int i)
        {
            var step = steps[(i + count) % count].DeviationMm;
            return step > limitMm ? 1 : step < -limitMm ? -1 : 0;
        }
    }
}
