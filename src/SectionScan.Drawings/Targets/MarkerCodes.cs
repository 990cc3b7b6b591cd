namespace SectionScan.Drawings.Targets;

/// <summary>The inside of each marker as a number: cells row by row from the top left, the first cell the highest bit, 1 for white.
/// </summary>
/// <remarks>Read from the predefined dictionaries of OpenCV 4.13 (aruco module); a test compares every cell with OpenCV's own. Held
/// here because drawings must not depend on a vision library.</remarks>
internal static class MarkerCodes
{
    /// <summary>The first 58 of DICT_5X5_100: as many as a board of 13 × 9 squares has white squares.</summary>
    public static readonly ulong[] Aruco5X5 =
    [
        0x145B2BC, 0x01C06E6, 0x1AF0EDD, 0x10395F7, 0x1AEB524, 0x1D4082D, 0x0D3D7EC, 0x0E2146B, 0x10D6132,
        0x1313FA5, 0x13CEE03, 0x1A2DAC0, 0x1E62B11, 0x05E7166, 0x1FCFCA8, 0x051E37F, 0x097A758, 0x0BEA26F,
        0x0F64DC4, 0x1061DE8, 0x12DDA75, 0x150E440, 0x16B0CA1, 0x0BA12DE, 0x19CD023, 0x1A59972, 0x1C3CE8B,
        0x0224246, 0x03B9672, 0x024223B, 0x027376E, 0x0368873, 0x040D0CE, 0x04AAAC8, 0x04643BA, 0x07A6FEA,
        0x0998AAC, 0x082D101, 0x09AAD1D, 0x0863C72, 0x0AD2825, 0x0A52F9E, 0x0D849F7, 0x0C309D9, 0x0DA7E31,
        0x0E9627A, 0x0E9B997, 0x0F94806, 0x0F59125, 0x0F6B7D7, 0x11B58E4, 0x11AD279, 0x11E380B, 0x1169445,
        0x12FFB4A, 0x158CB8D, 0x15987F0, 0x1422FDF,
    ];

    /// <summary>The first 20 of DICT_4X4_50: as many as a board of 8 × 5 squares has white squares.</summary>
    public static readonly ulong[] Aruco4X4 =
    [
        0xB532, 0x0F9A, 0x332D, 0x9946, 0x549E, 0x79CD, 0x9E2E, 0xC4F2, 0xFEDA, 0xCF56,
        0xF991, 0x11A7, 0x0EB7, 0x2A0F, 0x24B1, 0x263E, 0x4665, 0x6600, 0x6C5E, 0x76AF,
    ];

    /// <summary>The first 35 of DICT_APRILTAG_36h11: stations 0 to 34.</summary>
    public static readonly ulong[] AprilTag36H11 =
    [
        0x21A146BAB, 0x92D18FE9B, 0x7089014BB, 0x193979E27, 0x44153D3D7, 0x35CD5B8CF, 0xA10BA56A0,
        0x2B874A608, 0xB57FB8D44, 0x4E20B5A64, 0x61D897F2C, 0xAB3469FFC, 0x594CA45C2, 0xFA1C2D2E2,
        0x97C24B972, 0x75928624A, 0x1CAAFE99A, 0x3236DDC16, 0x884E527D6, 0x5771A8C7E, 0xF52925B81,
        0x2E59CC1A1, 0x7FA58AB31, 0xEB43384F9, 0x3913D5345, 0xD79B1A3B5, 0x0DFBE768D, 0x5CD7A031D,
        0xB9C8F7A4B, 0x46987E06B, 0x6E0C5D527, 0x5BC567BB4, 0x1E6302BC2, 0x8AC7D046A, 0xA65FE2326,
    ];
}
