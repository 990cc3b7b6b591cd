namespace SectionScan.Archive.Exchange;

/// <summary>What an export wrote.</summary>
/// <param name="EntryCount">How many entries.</param>
/// <param name="DocumentCount">How many section documents, each once.</param>
/// <param name="PhotoCount">How many photos.</param>
/// <param name="Bytes">The size of the archive file.</param>
public sealed record ExportReport(int EntryCount, int DocumentCount, int PhotoCount, long Bytes);
