namespace SectionScan.Testing.Rendering;

/// <summary>What the file says of itself (EXIF).</summary>
/// <param name="Make">The camera's maker.</param>
/// <param name="Model">The camera.</param>
/// <param name="FocalLength35Mm">The focal length for 35 mm film, rounded to whole mm as phones do.</param>
/// <param name="TakenAt">Date and time in EXIF form.</param>
public sealed record PhotoLabel(string Make, string Model, int FocalLength35Mm, string TakenAt);
