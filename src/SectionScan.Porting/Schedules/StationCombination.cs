using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Porting.Schedules;

/// <summary>The uncertainty of a weighted sum of the stations' areas. Some causes of error are common to all sections of a port (print
/// scale, thickness, the edge's bias), others belong to one section (edge noise, a doubtful stretch of edge).</summary>
internal static class StationCombination
{
    /// <summary>One row for each cause, in the unit of weight times area.</summary>
    /// <param name="stations">The stations.</param>
    /// <param name="weights">A weight for each.</param>
    /// <returns>The rows in the order in which the causes first appear.</returns>
    /// <remarks>For a common cause nobody knows whether it acts alike at two stations, so the larger is taken of what follows from full
    /// correlation and from none (JCGM 100:2008, 5.2.2 and 5.1.2): a sum then does not profit from averaging, nor a difference from
    /// cancelling.</remarks>
    public static IReadOnlyList<BudgetRow> Rows(IReadOnlyList<ScheduleStation> stations, IReadOnlyList<double> weights)
    {
        var order = new List<string>();
        var sums = new Dictionary<string, (double Linear, double Squares)>();
        for (var i = 0; i < stations.Count; i++)
        {
            var rows = stations[i].Measured[MeasureCatalogue.Area].Budget.Rows;
            for (var k = 0; k < rows.Count; k++)
            {
                var (linear, squares) = sums.GetValueOrDefault(rows[k].Source);
                var part = weights[i] * rows[k].StandardUncertainty;
                var isCommon = k >= stations[i].ErrorSources.Count || IsCommon(stations[i].ErrorSources[k]);
                sums[rows[k].Source] = (linear + (isCommon ? part : 0), squares + (part * part));
                if (!order.Contains(rows[k].Source))
                {
                    order.Add(rows[k].Source);
                }
            }
        }

        return [.. order.Select(name => new BudgetRow(name, Math.Sqrt(Math.Max(sums[name].Linear * sums[name].Linear, sums[name].Squares))))];
    }

    private static bool IsCommon(OutlineErrorSource source) => source.Effects.Any(effect => effect is not (RandomEdgeEffect or LocalOffsetEffect));
}
