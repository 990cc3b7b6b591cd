namespace SectionScan.Metrology.Capture;

/// <summary>What identifies a photo.</summary>
/// <param name="File">The file's name, without folders.</param>
/// <param name="Sha256">SHA-256 of the file's bytes, lower-case hexadecimal.</param>
/// <param name="WidthPx">Width as displayed (after EXIF orientation), px.</param>
/// <param name="HeightPx">Height as displayed, px.</param>
/// <param name="Camera">Maker and model from EXIF, or null.</param>
/// <param name="TakenAt">EXIF date and time in ISO 8601 without zone, or null.</param>
public sealed record PhotoFacts(string File, string Sha256, int WidthPx, int HeightPx, string? Camera, string? TakenAt);
