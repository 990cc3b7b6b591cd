namespace SectionScan.Metrology.Likeness;

/// <summary>One harmonic n of an outline: x gains A cos φ + B sin φ, y gains C cos φ + D sin φ, with φ = 2πn s/L at arc length s of
/// the whole length L. It draws an ellipse. Unit: mm.</summary>
/// <param name="A">Cosine coefficient of x, mm.</param>
/// <param name="B">Sine coefficient of x, mm.</param>
/// <param name="C">Cosine coefficient of y, mm.</param>
/// <param name="D">Sine coefficient of y, mm.</param>
public readonly record struct EllipticHarmonic(double A, double B, double C, double D);
