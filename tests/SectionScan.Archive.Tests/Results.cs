using SectionScan.Metrology.Results;

namespace SectionScan.Archive.Tests;

public static class Results
{
    public static Problem ProblemOf<T>(Result<T> result)
        where T : notnull
    {
        Assert.False(result.TryGet(out _, out var problem));
        Assert.NotEmpty(problem.Remedy);
        return problem;
    }
}
