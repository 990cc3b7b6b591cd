namespace SectionScan.Metrology.Likeness;

/// <summary>What may be done to a shape before it is compared with another. Moving is always allowed.</summary>
/// <param name="MayScale">True: only the form counts, the other shape is brought to the first one's size.</param>
/// <param name="MayMirror">True: the other shape may be mirrored left for right.</param>
/// <param name="MayTurn">True: the other shape may be turned; false: up stays up.</param>
public sealed record LikenessFreedom(bool MayScale = false, bool MayMirror = false, bool MayTurn = false);
