using SectionScan.Jobs.Files;
using SectionScan.Metrology.Results;

namespace SectionScan.Jobs.Comparing;

/// <summary>Sections named by a file or a folder.</summary>
public static class SectionFiles
{
    private const string Ending = ".section.json";

    /// <summary>Reads one section, or every section document of a folder in the order of their names.</summary>
    /// <param name="text">A folder, or what <see cref="SectionInput.Read"/> takes.</param>
    /// <param name="libraryPath">The library's file.</param>
    /// <param name="time">The clock.</param>
    public static Result<IReadOnlyList<SectionInput>> Read(string text, string libraryPath, TimeProvider time)
    {
        if (!Directory.Exists(text))
        {
            return SectionInput.Read(text, libraryPath, time).Then<IReadOnlyList<SectionInput>>(one => new[] { one });
        }

        string[] files;
        try
        {
            files = [.. Directory.GetFiles(text, "*" + Ending).Order(StringComparer.Ordinal)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return FileProblems.CannotRead(text, e.Message);
        }

        return files.Length > 0
            ? Result.All(files.Select(file => SectionInput.Read(file, libraryPath, time)))
            : ComparingProblems.NoSections(text);
    }

    /// <summary>Puts the sections of two ports together, station by station; two single sections belong together whatever their
    /// stations.</summary>
    /// <param name="first">Those of one port.</param>
    /// <param name="second">Those of the other.</param>
    /// <returns>The pairs and what is left alone; or a problem when a station is there twice, when sections of one port cannot be told apart
    /// for want of a station, or when no station is in both.</returns>
    public static Result<SectionPairing> Paired(IReadOnlyList<SectionInput> first, IReadOnlyList<SectionInput> second)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        if (first.Count == 1 && second.Count == 1)
        {
            return new SectionPairing([(first[0], second[0])], []);
        }

        foreach (var sections in new[] { first, second })
        {
            if (sections.GroupBy(s => s.Station).FirstOrDefault(group => group.Count() > 1) is { } twice)
            {
                string[] names = [.. twice.Select(s => s.Name)];
                return twice.Key is { } station ? ComparingProblems.StationTwice(station, names) : ComparingProblems.NoStation(names);
            }
        }

        var pairs = first.Where(s => s.Station is not null).OrderBy(s => s.Station)
            .Select(one => (First: one, Second: second.FirstOrDefault(other => other.Station == one.Station)))
            .Where(pair => pair.Second is not null).Select(pair => (pair.First, pair.Second!)).ToList();
        var stations = pairs.Select(pair => pair.First.Station).ToHashSet();
        return pairs.Count == 0
            ? ComparingProblems.NoStationInBoth(first, second)
            : new SectionPairing(pairs, [.. first.Concat(second).Where(s => !stations.Contains(s.Station))]);
    }
}
