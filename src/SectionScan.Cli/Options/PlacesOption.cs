using System.ComponentModel;
using SectionScan.Metrology.Frames;
using SectionScan.Metrology.Results;

namespace SectionScan.Cli.Options;

/// <summary>Places on a face, such as the middles of its studs.</summary>
/// <param name="Places">One place or more, mm.</param>
[TypeConverter(typeof(PlacesOptionConverter))]
public sealed record PlacesOption(IReadOnlyList<SectionPoint> Places)
{
    /// <summary>Reads <c>X,Y</c> or <c>X,Y,X,Y,…</c> in millimetres.</summary>
    public static Result<PlacesOption> Parse(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var count = text.Count(c => c == ',') + 1;
        return count % 2 == 0 && NumberList.Read(text, ',', count) is { } n
            ? new PlacesOption([.. Enumerable.Range(0, count / 2).Select(k => new SectionPoint(n[2 * k], n[(2 * k) + 1]))])
            : OptionProblems.PlacesNotPairs(text);
    }
}
