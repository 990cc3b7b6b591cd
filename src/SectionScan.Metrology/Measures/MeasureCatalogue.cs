namespace SectionScan.Metrology.Measures;

/// <summary>The measures of an outline. A new one is one entry here; tables, documents and budgets follow.</summary>
public static class MeasureCatalogue
{
    /// <summary>The enclosed area.</summary>
    public static Measure Area { get; } = new("area", "Area", MeasureDimension.Area, facts => facts.AreaMm2);

    /// <summary>The length of the outline.</summary>
    public static Measure Perimeter { get; } = new("perimeter", "Perimeter", MeasureDimension.Length, facts => facts.PerimeterMm);

    /// <summary>The extent from left to right in the section frame; not a Feret diameter.</summary>
    public static Measure Width { get; } = new("width", "Width", MeasureDimension.Length, facts => facts.WidthMm, HangsOnFewPoints: true);

    /// <summary>The extent from floor to roof in the section frame; not a Feret diameter.</summary>
    public static Measure Height { get; } = new("height", "Height", MeasureDimension.Length, facts => facts.HeightMm, HangsOnFewPoints: true);

    /// <summary>The diameter of the circle of the same area, √(4A/π).</summary>
    public static Measure EquivalentDiameter { get; } = new(
        "equivalentDiameter", "Equivalent diameter", MeasureDimension.Length,
        facts => Math.Sqrt(4 * Math.Abs(facts.AreaMm2) / Math.PI));

    /// <summary>The hydraulic diameter, 4A/P.</summary>
    public static Measure HydraulicDiameter { get; } = new(
        "hydraulicDiameter", "Hydraulic diameter", MeasureDimension.Length, facts => 4 * facts.AreaMm2 / facts.PerimeterMm);

    /// <summary>4πA/P²: 1 for a circle, less for every other shape.</summary>
    public static Measure Circularity { get; } = new(
        "circularity", "Circularity", MeasureDimension.None,
        facts => 4 * Math.PI * facts.AreaMm2 / (facts.PerimeterMm * facts.PerimeterMm));

    /// <summary>The largest distance between two points of the outline.</summary>
    public static Measure MaxFeret { get; } = new(
        "maxFeret", "Largest Feret diameter", MeasureDimension.Length, facts => facts.Feret.MaxMm, HangsOnFewPoints: true);

    /// <summary>The least distance between two parallel lines that hold the outline between them.</summary>
    public static Measure MinFeret { get; } = new(
        "minFeret", "Least Feret diameter", MeasureDimension.Length, facts => facts.Feret.MinMm, HangsOnFewPoints: true);

    /// <summary>The larger principal second moment about the centroid.</summary>
    public static Measure LargestMoment { get; } = new(
        "largestSecondMoment", "Largest second moment of area", MeasureDimension.SecondMomentOfArea,
        facts => PrincipalAxes.Of(facts.Moments).LargestMm4);

    /// <summary>The smaller principal second moment about the centroid.</summary>
    public static Measure SmallestMoment { get; } = new(
        "smallestSecondMoment", "Smallest second moment of area", MeasureDimension.SecondMomentOfArea,
        facts => PrincipalAxes.Of(facts.Moments).SmallestMm4);

    /// <summary>The measures that every section is reported with, in the order of tables.</summary>
    public static IReadOnlyList<Measure> All { get; } =
        [Area, Perimeter, Width, Height, EquivalentDiameter, HydraulicDiameter, Circularity, MaxFeret, MinFeret];

    /// <summary>The width of the outline at a height, from its leftmost to its rightmost crossing; zero where it has none.</summary>
    /// <param name="yMm">The height in the section frame, mm.</param>
    public static Measure WidthAt(double yMm) => double.IsFinite(yMm)
        ? new("widthAtHeight", "Width at height", MeasureDimension.Length, facts => WidthAtHeight.Of(facts.Corners, yMm).OverallMm, HangsOnFewPoints: true)
        : throw new ArgumentOutOfRangeException(nameof(yMm), yMm, "A height must be a finite number of mm.");
}
