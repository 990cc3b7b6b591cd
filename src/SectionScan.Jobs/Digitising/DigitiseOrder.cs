using SectionScan.Imaging.Digitising;

namespace SectionScan.Jobs.Digitising;

/// <summary>What is to be digitised, and how.</summary>
/// <param name="Photos">The photos.</param>
/// <param name="Settings">How each is digitised.</param>
/// <param name="SettingsInWords">The same as name and value, for the documents.</param>
/// <param name="Program">Name and version of the program, for the documents.</param>
/// <param name="OutputFolder">Where documents, drawings and pictures go; null writes none.</param>
/// <param name="IsInch">True when drawings are to be labelled in inches.</param>
public sealed record DigitiseOrder(
    IReadOnlyList<string> Photos,
    DigitiseSettings Settings,
    IReadOnlyDictionary<string, string> SettingsInWords,
    string Program,
    string? OutputFolder,
    bool IsInch);
