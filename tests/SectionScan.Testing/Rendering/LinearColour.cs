namespace SectionScan.Testing.Rendering;

/// <summary>Linear light or reflectance in the three sRGB primaries; 1 is a perfect white.</summary>
public readonly record struct LinearColour(float R, float G, float B)
{
    /// <summary>The same grey in all three.</summary>
    public static LinearColour Grey(float level) => new(level, level, level);

    /// <summary>Added up.</summary>
    public static LinearColour operator +(LinearColour a, LinearColour b) => new(a.R + b.R, a.G + b.G, a.B + b.B);

    /// <summary>Light on a surface: channel by channel.</summary>
    public static LinearColour operator *(LinearColour a, LinearColour b) => new(a.R * b.R, a.G * b.G, a.B * b.B);

    /// <summary>Made brighter or darker.</summary>
    public static LinearColour operator *(LinearColour a, float factor) => new(a.R * factor, a.G * factor, a.B * factor);
}
