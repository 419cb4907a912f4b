namespace Laydown.Layout.Plates;

/// <summary>One cell cut.</summary>
/// <param name="Item">Its lowest pane.</param>
/// <param name="Above">The pane above, or −1.</param>
/// <param name="Turned">Whether the lowest lies turned.</param>
/// <param name="AboveTurned">Whether the one above lies turned.</param>
/// <param name="Where">Which row it goes to.</param>
/// <param name="AtTop">Whether its waste lies below it.</param>
internal readonly record struct PlateStep(int Item, int Above, bool Turned, bool AboveTurned, PlateWhere Where, bool AtTop);
