namespace SectionScan.Imaging.Scales;

/// <summary>Where a photo's scale comes from when it shows no printed target of ours.</summary>
public abstract record ScaleSource;
