namespace SectionScan.Imaging.Grounds;

/// <summary>A cubic in Newton's form over even steps.</summary>
/// <param name="Start">Its value at zero.</param>
/// <param name="First">First divided difference.</param>
/// <param name="Second">Second divided difference.</param>
/// <param name="Third">Third divided difference.</param>
/// <param name="Step">The step between its nodes.</param>
internal readonly record struct RowCubic(float Start, float First, float Second, float Third, float Step)
{
    /// <summary>The value at a place.</summary>
    public float At(float x) => Start + (x * (First + ((x - Step) * (Second + ((x - (2 * Step)) * Third)))));
}
