namespace SectionScan.Porting.Joints;

/// <summary>From where a face of a joint was seen.</summary>
public enum FaceView
{
    /// <summary>Told by the thing: openings from the front of their face, slices and bare outlines with the flow.</summary>
    AsUsual,

    /// <summary>Looking at the face.</summary>
    Front,

    /// <summary>Looking with the flow.</summary>
    WithFlow,
}
