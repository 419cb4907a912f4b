using Laydown.Measures;

namespace Laydown.Layout.Sheets;

/// <summary>Something to be laid out: a printed rectangle and how often it is wanted.</summary>
/// <param name="Id">Unique in one layout: the item's id, for a panel followed by <c>/1</c>, <c>/2</c> …</param>
/// <param name="Printed">Printed size, bleed included, mm.</param>
/// <param name="BleedMm">Bleed on each side, contained in <paramref name="Printed"/>, mm.</param>
/// <param name="Quantity">How many; at least 1.</param>
/// <param name="MayTurn">Whether it may lie turned by 90° (false where flute, grain or picture forbid it).</param>
/// <param name="Part">For a panel, the part of the item's printed picture it shows, mm from that picture's lower left corner; null for the whole.</param>
/// <param name="SeamBleedMm">For a panel that butts its neighbours, what it shows of them beyond each seam, contained in <paramref name="Part"/>, mm.</param>
public sealed record Piece(string Id, SizeMm Printed, double BleedMm, int Quantity, bool MayTurn, RectMm? Part = null, double SeamBleedMm = 0)
{
    /// <summary>Name of a set, such as a kit or a colour match: pieces that name the same one want the same boards. Null for none.</summary>
    public string? KeepWith { get; init; }

    /// <summary>Day it is due; null where it does not matter. Pieces of one day want the same boards, earlier days come on earlier sheets.</summary>
    public DateOnly? Due { get; init; }

    /// <summary>How many copies more than wanted may be made to fill the last board; 0 or more.</summary>
    public int MostOver { get; init; }
}
