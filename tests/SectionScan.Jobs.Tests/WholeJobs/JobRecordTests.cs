using SectionScan.Jobs.WholeJobs;

namespace SectionScan.Jobs.Tests.WholeJobs;

public sealed class JobRecordTests
{
    private static readonly JobRecord Before = Record("program 1", ("p01.jpg", "a"), ("report.pdf", "b"));

    [Fact]
    public void Without_an_earlier_run_it_is_the_first() => Assert.Equal(JobRepetitionKind.First, Before.Against(null).Kind);

    [Fact]
    public void The_same_results_are_the_same_whoever_made_them() =>
        Assert.Equal(JobRepetitionKind.Same, Record("program 2", ("p01.jpg", "a"), ("report.pdf", "b")).Against(Before).Kind);

    [Fact]
    public void A_changed_photo_explains_changed_results()
    {
        var repetition = Record("program 1", ("p01.jpg", "x"), ("report.pdf", "y")).Against(Before);

        Assert.Equal(JobRepetitionKind.InputsChanged, repetition.Kind);
        Assert.Contains("p01.jpg", repetition.InWords, StringComparison.Ordinal);
    }

    [Fact]
    public void Changed_results_of_the_same_inputs_are_named()
    {
        var repetition = Record("program 1", ("p01.jpg", "a"), ("report.pdf", "y")).Against(Before);

        Assert.Equal(JobRepetitionKind.Differs, repetition.Kind);
        Assert.Contains("report.pdf", repetition.InWords, StringComparison.Ordinal);
    }

    private static JobRecord Record(string program, (string, string) input, (string, string) result) => new(
        JobRecord.SchemaName, program, new Dictionary<string, string> { [input.Item1] = input.Item2 }, new Dictionary<string, string> { [result.Item1] = result.Item2 });
}
