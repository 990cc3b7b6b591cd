namespace SectionScan.Porting.Joints;

/// <summary>A joint to be matched.</summary>
/// <param name="Port">The port face, which stays.</param>
/// <param name="Manifold">The manifold's flange, which is placed.</param>
/// <param name="Flow">Which way the gas passes.</param>
/// <param name="Freedom">How far the manifold can be moved.</param>
public sealed record JointOrder(JointFace Port, JointFace Manifold, JointFlow Flow, JointFreedom Freedom)
{
    /// <summary>The gasket between them, or null.</summary>
    public JointFace? Gasket { get; init; }

    /// <summary>The step that is left alone even where it can be told from none, mm.</summary>
    public double AllowedStepMm { get; init; }
}
