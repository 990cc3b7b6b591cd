namespace SectionScan.Jobs.WholeJobs;

/// <summary>How a run compares with the one before it.</summary>
public enum JobRepetitionKind
{
    /// <summary>There was none before.</summary>
    First,

    /// <summary>The results are the same to the last byte.</summary>
    Same,

    /// <summary>Results differ, and so does what went in, or the program.</summary>
    InputsChanged,

    /// <summary>Results differ though nothing that went in does: a defect, or files changed by hand.</summary>
    Differs,
}

/// <summary>How a run compares with the one before it in the same folder.</summary>
/// <param name="Kind">The verdict.</param>
/// <param name="ChangedInputs">Inputs that differ, by name.</param>
/// <param name="ChangedResults">Results that differ, by name.</param>
public sealed record JobRepetition(JobRepetitionKind Kind, IReadOnlyList<string> ChangedInputs, IReadOnlyList<string> ChangedResults)
{
    /// <summary>The verdict in a sentence.</summary>
    public string InWords => Kind switch
    {
        JobRepetitionKind.First => "First run in this folder.",
        JobRepetitionKind.Same => "Run again: every result is the same to the last byte.",
        JobRepetitionKind.InputsChanged => ChangedInputs.Count == 0
            ? "Run again with another version of the program: results differ."
            : $"Run again with changed inputs ({string.Join(", ", ChangedInputs)}): results differ.",
        _ => $"Run again from the same inputs, yet these results differ: {string.Join(", ", ChangedResults)}.",
    };
}
