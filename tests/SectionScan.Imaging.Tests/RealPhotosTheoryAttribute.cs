using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests;

/// <summary>A theory that reads real photographs; skipped, visibly, where their folder is missing.</summary>
public sealed class RealPhotosTheoryAttribute : TheoryAttribute
{
    /// <summary>Skips the tests when there are no photographs.</summary>
    public RealPhotosTheoryAttribute()
    {
        if (RealPhotos.Folder is null)
        {
            Skip = RealPhotos.WhyMissing;
        }
    }
}
