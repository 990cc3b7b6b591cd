using SectionScan.Testing.Truth;

namespace SectionScan.Imaging.Tests;

/// <summary>A test that reads real photographs; skipped, visibly, where their folder is missing.</summary>
public sealed class RealPhotosFactAttribute : FactAttribute
{
    /// <summary>Skips the test when there are no photographs.</summary>
    public RealPhotosFactAttribute()
    {
        if (RealPhotos.Folder is null)
        {
            Skip = RealPhotos.WhyMissing;
        }
    }
}
