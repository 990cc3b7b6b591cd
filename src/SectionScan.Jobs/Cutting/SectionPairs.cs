using System.Globalization;
using SectionScan.Jobs.Comparing;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Cutting;

/// <summary>Sections of one port, station by station, from a file, an entry of the library or a folder of section documents.</summary>
public static class SectionPairs
{
    private const string DocumentEnding = ".section.json";

    /// <summary>Reads sections.</summary>
    /// <param name="text">A section document, an outline as CSV, <c>library:</c> and an entry, or a folder of section documents.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    /// <returns>The sections by station; or what cannot be read, or <c>station-twice</c>, or <c>no-sections</c>.</returns>
    public static Result<IReadOnlyList<SectionInput>> Read(string text, string libraryPath, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (!Directory.Exists(text))
        {
            return SectionInput.Read(text, libraryPath, time).Then<IReadOnlyList<SectionInput>>(section => new[] { section });
        }

        var sections = new List<SectionInput>();
        foreach (var file in Directory.GetFiles(text, "*" + DocumentEnding).Order(StringComparer.Ordinal))
        {
            if (!SectionInput.Read(file, libraryPath, time).TryGet(out var section, out var problem))
            {
                return problem;
            }

            sections.Add(section);
        }

        var twice = sections.GroupBy(section => section.Station).FirstOrDefault(group => group.Count() > 1);
        return sections.Count == 0 ? CuttingProblems.NoSections(text, DocumentEnding)
            : twice is not null ? CuttingProblems.StationTwice(text, StationWord(twice.Key), [.. twice.Select(section => section.Name)])
            : sections.OrderBy(section => section.Station ?? int.MaxValue).ToList();
    }

    /// <summary>Pairs sections by station; one and one are a pair whatever their stations.</summary>
    /// <param name="present">The present sections.</param>
    /// <param name="other">The sections to pair them with.</param>
    /// <returns>Pairs by station, or <c>no-common-station</c>.</returns>
    public static Result<IReadOnlyList<(SectionInput Present, SectionInput Other)>> Pair(
        IReadOnlyList<SectionInput> present, IReadOnlyList<SectionInput> other)
    {
        ArgumentNullException.ThrowIfNull(present);
        ArgumentNullException.ThrowIfNull(other);
        if (present.Count == 1 && other.Count == 1)
        {
            return new[] { (present[0], other[0]) };
        }

        var pairs = present.Where(section => section.Station is not null)
            .Select(section => (Present: section, Other: other.FirstOrDefault(each => each.Station == section.Station)))
            .Where(pair => pair.Other is not null).Select(pair => (pair.Present, pair.Other!)).ToList();
        return pairs.Count == 0 ? CuttingProblems.NoCommonStation(Stations(present), Stations(other)) : pairs;
    }

    private static string Stations(IReadOnlyList<SectionInput> sections) => string.Join(", ", sections.Select(section => StationWord(section.Station)));

    private static string StationWord(int? station) => station?.ToString(CultureInfo.InvariantCulture) ?? "none";
}
