using SectionScan.Metrology.Comparison;
using SectionScan.Metrology.Measures;
using SectionScan.Metrology.Results;
using SectionScan.Metrology.Uncertainty;

namespace SectionScan.Jobs.Comparing;

/// <summary>The spread of one station over several ports: cylinder against cylinder.</summary>
/// <param name="Station">The station; null where single sections without a number were given.</param>
/// <param name="Sections">The sections, each with the port's name.</param>
/// <param name="Spread">How far their walls lie apart.</param>
public sealed record StationSpread(int? Station, IReadOnlyList<(string Port, SectionInput Section)> Sections, OutlineSpread Spread)
{
    /// <summary>u of the distance of two walls, mm: the largest that two of the sections give; NaN when the error of one is not known.</summary>
    public double RangeStandardUncertaintyMm
    {
        get
        {
            if (Sections.Any(each => !each.Section.IsErrorKnown))
            {
                return double.NaN;
            }

            var two = Sections.Select(each => WallUncertainty.Of(each.Section.Outline, each.Section.ErrorSources)).OrderDescending().Take(2).ToList();
            return double.Hypot(two[0], two[1]);
        }
    }

    /// <summary>The least and the greatest of a measure, and whose they are.</summary>
    public (double Least, string LeastPort, double Greatest, string GreatestPort) Of(Measure measure)
    {
        ArgumentNullException.ThrowIfNull(measure);
        var values = Sections.Select(each => (each.Port, Value: measure.Definition(PolygonFacts.Of(each.Section.Outline)))).OrderBy(each => each.Value).ToList();
        return (values[0].Value, values[0].Port, values[^1].Value, values[^1].Port);
    }

    /// <summary>The mean distance between innermost and outermost wall in each sector, mm, and the greatest.</summary>
    public IReadOnlyList<(OutlineRegion Region, double MeanMm, double MostMm)> Regions => [.. Spread.Places
        .GroupBy(place => place.Region).OrderBy(group => group.Key)
        .Select(group => (group.Key, group.Average(place => place.RangeMm), group.Max(place => place.RangeMm)))];

    /// <summary>Finds the spread of every station that two or more ports have.</summary>
    /// <param name="ports">The ports' names and sections.</param>
    /// <param name="choice">How sections are laid on each other.</param>
    public static Result<IReadOnlyList<StationSpread>> OfPorts(
        IReadOnlyList<(string Port, IReadOnlyList<SectionInput> Sections)> ports, AlignmentChoice choice)
    {
        ArgumentNullException.ThrowIfNull(ports);
        var isSingle = ports.All(port => port.Sections.Count == 1);
        var stations = new List<StationSpread>();
        var all = ports.SelectMany(port => port.Sections.Select(section => (port.Port, Section: section)));
        foreach (var group in all.GroupBy(each => isSingle ? null : each.Section.Station).OrderBy(group => group.Key))
        {
            if (group.GroupBy(each => each.Port).FirstOrDefault(port => port.Count() > 1) is { } twice)
            {
                return group.Key is { } station
                    ? ComparingProblems.StationTwice(station, [.. twice.Select(each => each.Section.Name)])
                    : ComparingProblems.NoStation([.. group.Select(each => each.Section.Name)]);
            }

            var sections = group.ToList();
            if (sections.Count < 2)
            {
                continue;
            }

            if (!OutlineSpread.Of([.. sections.Select(each => (each.Section.Outline, each.Section.Marks))], choice).TryGet(out var spread, out var problem))
            {
                return problem;
            }

            stations.Add(new(isSingle ? sections[0].Section.Station : group.Key, sections, spread));
        }

        return stations.Count > 0 ? stations : ComparingProblems.NoStationInBoth();
    }
}
