namespace SectionScan.Archive.Entries;

/// <summary>The original photo of a section, kept in the library to the last byte.</summary>
/// <param name="Name">Its file name when it was kept, no folders.</param>
/// <param name="Sha256">SHA-256 of its bytes, lower-case hexadecimal.</param>
/// <param name="Content">Its bytes.</param>
public sealed record KeptPhoto(string Name, string Sha256, ReadOnlyMemory<byte> Content);
