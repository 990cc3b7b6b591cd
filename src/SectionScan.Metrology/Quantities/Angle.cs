namespace SectionScan.Metrology.Quantities;

/// <summary>A plane angle, held in radians, counter-clockwise positive. Any size and sign; the default is zero.</summary>
public readonly record struct Angle
{
    private Angle(double radians) => Radians = radians;

    /// <summary>The angle in radians.</summary>
    public double Radians { get; }

    /// <summary>The angle in degrees.</summary>
    public double Degrees => double.RadiansToDegrees(Radians);

    /// <summary>An angle from radians; must be finite.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Angle FromRadians(double radians) => double.IsFinite(radians)
        ? new(radians)
        : throw new ArgumentOutOfRangeException(nameof(radians), radians, "An angle must be a finite number of radians.");

    /// <summary>An angle from degrees; must be finite.</summary>
    /// <exception cref="ArgumentOutOfRangeException">Not a finite number.</exception>
    public static Angle FromDegrees(double degrees) => double.IsFinite(degrees)
        ? new(double.DegreesToRadians(degrees))
        : throw new ArgumentOutOfRangeException(nameof(degrees), degrees, "An angle must be a finite number of degrees.");

    /// <summary>The opposite turn.</summary>
    public static Angle operator -(Angle angle) => new(-angle.Radians);

    /// <summary>The two turns one after the other.</summary>
    public static Angle operator +(Angle left, Angle right) => new(left.Radians + right.Radians);

    /// <summary>The turn from <paramref name="right"/> to <paramref name="left"/>.</summary>
    public static Angle operator -(Angle left, Angle right) => new(left.Radians - right.Radians);
}
