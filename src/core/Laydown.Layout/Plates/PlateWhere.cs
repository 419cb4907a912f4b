namespace Laydown.Layout.Plates;

/// <summary>Which row a cell goes to.</summary>
internal enum PlateWhere : byte
{
    /// <summary>The open row.</summary>
    Row,

    /// <summary>A new row of the open column.</summary>
    Column,

    /// <summary>A new column of the plate.</summary>
    Plate,

    /// <summary>A new plate.</summary>
    NewPlate,
}
