using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Search;

/// <summary>What can be wrong with a search.</summary>
public static class SearchProblems
{
    /// <summary>No word to look for.</summary>
    public static Problem NoWords(string library) => new(
        "search-without-words", "The search holds no letter and no digit.", library, "Give one or more words, or the beginnings of words.");

    /// <summary>A range without sense.</summary>
    public static Problem RangeUnusable(string name, string what) => new(
        "search-range-unusable", what, name, "Give the least value, the greatest value, or both, the least first.");

    /// <summary>A unit of another kind than the number.</summary>
    public static Problem UnitUnusable(string name, string unit) => new(
        "search-unit-unusable", $"\"{unit}\" is not a unit of this number.", name, "Use mm, cm, m or in for lengths, and mm², cm² or in² for areas.");
}
