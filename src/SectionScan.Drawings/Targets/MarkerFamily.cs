namespace SectionScan.Drawings.Targets;

/// <summary>Square markers of one family: what is white within their black border.</summary>
public sealed class MarkerFamily
{
    private readonly ulong[] codes;

    private MarkerFamily(string name, int bitsAcross, ulong[] codes)
    {
        Name = name;
        BitsAcross = bitsAcross;
        this.codes = codes;
    }

    /// <summary>The markers of the sheet.</summary>
    public static MarkerFamily Sheet { get; } = new("DICT_5X5_100", 5, MarkerCodes.Aruco5X5);

    /// <summary>The markers of the card.</summary>
    public static MarkerFamily Card { get; } = new("DICT_4X4_50", 4, MarkerCodes.Aruco4X4);

    /// <summary>The station tags; the id is the station's number.</summary>
    public static MarkerFamily StationTags { get; } = new("DICT_APRILTAG_36h11", 6, MarkerCodes.AprilTag36H11);

    /// <summary>The family's name in OpenCV.</summary>
    public string Name { get; }

    /// <summary>Cells across the inside, without the border that is one cell wide.</summary>
    public int BitsAcross { get; }

    /// <summary>How many markers are held here; ids run from 0 to one less.</summary>
    public int Count => codes.Length;

    /// <summary>True when a cell of the inside is white.</summary>
    /// <param name="id">The marker, 0 to <see cref="Count"/> − 1.</param>
    /// <param name="row">Row from the top, 0 to <see cref="BitsAcross"/> − 1.</param>
    /// <param name="column">Column from the left, 0 to <see cref="BitsAcross"/> − 1.</param>
    public bool IsWhite(int id, int row, int column)
    {
        CheckWithin(id, codes.Length, nameof(id));
        CheckWithin(row, BitsAcross, nameof(row));
        CheckWithin(column, BitsAcross, nameof(column));
        return ((codes[id] >> ((BitsAcross * BitsAcross) - 1 - (row * BitsAcross) - column)) & 1) == 1;
    }

    /// <summary>The marker's cells by row and column with its border: true where black.</summary>
    public bool[,] BlackCells(int id)
    {
        var across = BitsAcross + 2;
        var black = new bool[across, across];
        for (var row = 0; row < across; row++)
        {
            for (var column = 0; column < across; column++)
            {
                var isBorder = row == 0 || column == 0 || row == across - 1 || column == across - 1;
                black[row, column] = isBorder || !IsWhite(id, row - 1, column - 1);
            }
        }

        return black;
    }

    private static void CheckWithin(int value, int count, string name)
    {
        if (value < 0 || value >= count)
        {
            throw new ArgumentOutOfRangeException(name, value, $"Must lie within 0 and {count - 1}.");
        }
    }
}
