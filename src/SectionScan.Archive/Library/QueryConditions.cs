using System.Globalization;
using Dapper;

namespace SectionScan.Archive.Library;

/// <summary>Conditions on entries, all of which must hold. What a person wrote goes in as a parameter, never as SQL.</summary>
internal sealed class QueryConditions
{
    private readonly List<string> conditions = [];

    public QueryConditions(bool includesRemoved)
    {
        if (!includesRemoved)
        {
            conditions.Add("c.is_removed = 0");
        }
    }

    public DynamicParameters Parameters { get; } = new();

    public string Sql => conditions.Count == 0 ? "1" : string.Join(" AND ", conditions);

    /// <summary>Adds a condition whose {0}, {1}, … stand for the values.</summary>
    public void Add(string condition, params object[] values)
    {
        var names = new object[values.Length];
        for (var i = 0; i < values.Length; i++)
        {
            names[i] = string.Create(CultureInfo.InvariantCulture, $"@value{Parameters.ParameterNames.Count()}");
            Parameters.Add((string)names[i], values[i]);
        }

        conditions.Add(string.Format(CultureInfo.InvariantCulture, condition, names));
    }

    public void AddIf(string? value, string condition, Func<string, string> tidy)
    {
        if (value is not null)
        {
            Add(condition, tidy(value));
        }
    }
}
