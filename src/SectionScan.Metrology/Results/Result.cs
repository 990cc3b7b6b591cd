using System.Diagnostics.CodeAnalysis;

namespace SectionScan.Metrology.Results;

/// <summary>Either a value or the problem that stood in its way. Exactly one of the two is set.</summary>
/// <typeparam name="T">The value's type.</typeparam>
public sealed class Result<T>
    where T : notnull
{
    private readonly T? value;
    private readonly Problem? problem;

    private Result(T? value, Problem? problem)
    {
        this.value = value;
        this.problem = problem;
    }

    /// <summary>True when there is a value.</summary>
    public bool IsSuccess => problem is null;

    /// <summary>Wraps a value.</summary>
    public static implicit operator Result<T>(T value) => new(value ?? throw new ArgumentNullException(nameof(value)), null);

    /// <summary>Wraps a problem.</summary>
    public static implicit operator Result<T>(Problem problem) => new(default, problem ?? throw new ArgumentNullException(nameof(problem)));

    /// <summary>Gives the value and true, or the problem and false.</summary>
    public bool TryGet([NotNullWhen(true)] out T? value, [NotNullWhen(false)] out Problem? problem)
    {
        value = this.value;
        problem = this.problem;
        return problem is null;
    }

    /// <summary>The value, for callers that have already made sure of it (tests, demos).</summary>
    /// <exception cref="InvalidOperationException">There is a problem instead; its text is the message.</exception>
    public T ValueOrThrow() => problem is null ? value! : throw new InvalidOperationException($"{problem.Code}: {problem}");

    /// <summary>Applies <paramref name="next"/> to the value, or passes the problem on.</summary>
    public Result<TNext> Then<TNext>(Func<T, Result<TNext>> next)
        where TNext : notnull
    {
        ArgumentNullException.ThrowIfNull(next);
        return problem is null ? next(value!) : problem;
    }
}

/// <summary>Many results as one.</summary>
public static class Result
{
    /// <summary>All values in order, or the first problem; what comes after that is not asked for.</summary>
    public static Result<IReadOnlyList<T>> All<T>(IEnumerable<Result<T>> results)
        where T : notnull
    {
        ArgumentNullException.ThrowIfNull(results);
        var values = new List<T>();
        foreach (var result in results)
        {
            if (!result.TryGet(out var value, out var problem))
            {
                return problem;
            }

            values.Add(value);
        }

        return values;
    }
}
