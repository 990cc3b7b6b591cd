using SectionScan.Porting.Engines;

namespace SectionScan.Porting.GasSpeeds;

/// <summary>The areas at a valve, mm², each for one valve.</summary>
public static class ValveAreas
{
    /// <summary>Area of the valve's head: πD²/4.</summary>
    public static double HeadMm2(ValveData valve) => Circle(NotNull(valve).DiameterMm);

    /// <summary>Area of the head less that of the stem.</summary>
    public static double HeadLessStemMm2(ValveData valve) => Circle(NotNull(valve).DiameterMm) - Circle(valve.StemMm);

    /// <summary>Area of the throat as a whole circle, as throat and valve are compared; null when the throat was not told.</summary>
    public static double? ThroatMm2(ValveData valve) => NotNull(valve).ThroatMm is { } throat ? Circle(throat) : null;

    /// <summary>The curtain: the cylinder between the rim of the head and the seat, πDL.</summary>
    public static double CurtainMm2(ValveData valve, double liftMm) => Math.PI * NotNull(valve).DiameterMm * liftMm;

    /// <summary>The true least area between valve and seat, or the throat less the stem where that is smaller. At low lift the curtain is
    /// far too large.</summary>
    /// <param name="valve">The valve; its seat's width must be told.</param>
    /// <param name="liftMm">The lift, mm, zero or more.</param>
    /// <returns>The area, or null when the seat's width was not told.</returns>
    /// <remarks>With D the head, w the seat's width across the valve's axis, β the seat's angle: for L &lt; w/(sin β cos β)
    /// π·L·cos β·(D − 2w + ½·L·sin 2β); beyond it π·(D − w)·√((L − w·tan β)² + w²); at the end the port's own
    /// area less the stem (Heywood 1988, Internal Combustion Engine Fundamentals, eq. 6.7 to 6.9, from memory; geometry derived again).</remarks>
    public static double? LeastMm2(ValveData valve, double liftMm)
    {
        if (NotNull(valve).SeatWidthMm is not { } width)
        {
            return null;
        }

        var (sin, cos) = Math.SinCos(valve.SeatAngle.Radians);
        var (diameter, tan) = (valve.DiameterMm, sin / cos);
        var area = liftMm < width / (sin * cos)
            ? Math.PI * liftMm * cos * (diameter - (2 * width) + (liftMm / 2 * 2 * sin * cos))
            : Math.PI * (diameter - width) * Math.Sqrt(Square(liftMm - (width * tan)) + Square(width));
        return valve.ThroatMm is { } throat ? Math.Min(area, Circle(throat) - Circle(valve.StemMm)) : area;
    }

    /// <summary>The lift at which the curtain equals the area of the head: a quarter of its diameter.</summary>
    public static double FullLiftMm(ValveData valve) => NotNull(valve).DiameterMm / 4;

    private static ValveData NotNull(ValveData valve)
    {
        ArgumentNullException.ThrowIfNull(valve);
        return valve;
    }

    private static double Circle(double diameterMm) => Math.PI * diameterMm * diameterMm / 4;

    private static double Square(double value) => value * value;
}
