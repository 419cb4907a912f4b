namespace Laydown.Layout.Guillotine;

/// <summary>Pieces the search need not tell apart.</summary>
/// <param name="W">Width.</param>
/// <param name="H">Height.</param>
/// <param name="MayTurn">Whether turning it changes anything and is allowed.</param>
/// <param name="Copies">How many.</param>
/// <param name="Group">Group it wants to share sheets with; −1 for none.</param>
/// <param name="Pieces">Pieces of the problem, each with its copies, in the order of the problem.</param>
internal sealed record CutType(int W, int H, bool MayTurn, int Copies, int Group, IReadOnlyList<(int Piece, int Copies)> Pieces)
{
    internal long Area => (long)W * H;

    internal bool Fits(int w, int h) => (W <= w && H <= h) || (MayTurn && H <= w && W <= h);
}
