namespace SectionScan.Testing.Golden;

/// <summary>What a test gave is not what its expectation says.</summary>
public sealed class GoldenFileException(string message) : Exception(message);
