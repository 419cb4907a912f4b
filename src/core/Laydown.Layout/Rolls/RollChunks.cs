using Laydown.Layout.Packing;
using Laydown.Layout.Rectangles;
using Laydown.Layout.Strips;

namespace Laydown.Layout.Rolls;

/// <summary>Pieces for free cutting in sections that a longest length bounds: filled like boards of that length, then each pushed together.</summary>
/// <param name="types">Pieces.</param>
/// <param name="width">Usable width, µm.</param>
/// <param name="longest">Greatest length of a section, µm.</param>
internal sealed class RollChunks(IReadOnlyList<PieceType> types, int width, int longest)
{
    private const int Fillings = 300;

    /// <summary>The same copies, one section after the other.</summary>
    internal IReadOnlyList<Spot> Lay(IReadOnlyList<Spot> spots)
    {
        int[] counts = new int[types.Count];
        foreach (Spot spot in spots)
            counts[spot.Type]++;
        return Orders.Plain(types).Select(o => Chain([.. o.Where(e => counts[e.Type] > 0).Select(e => e with { Copies = counts[e.Type] })]))
            .MinBy(s => s.Max(p => p.Place.Top))!;
    }

    private List<Spot> Chain(IReadOnlyList<Entry> order)
    {
        List<Spot> all = [];
        int from = 0;
        foreach (FilledSheet sheet in SheetFill.All(types, order, () => new MaximalRectangles(width, longest, Fit.ShortRest), CancellationToken.None))
        {
            IReadOnlyList<Spot> section = Pushed(sheet.Spots);
            for (int i = 0; i < sheet.Repeats && from <= StripSearch.Limit; i++)
            {
                int start = from;
                all.AddRange(section.Select(s => s with { Place = s.Place with { Y = s.Place.Y + start } }));
                from += section.Max(s => s.Place.Top);
            }
        }

        return all;
    }

    private IReadOnlyList<Spot> Pushed(IReadOnlyList<Spot> spots)
    {
        IReadOnlyList<RectPiece> pieces = [.. spots.Select(s => s.Type).Distinct().Order().Select(t => new RectPiece(types[t].Piece.Id, types[t].W, types[t].H, spots.Count(s => s.Type == t), types[t].MayTurn))];
        IReadOnlyList<int> kept = [.. spots.Select(s => s.Type).Distinct().Order()];
        StripAnswer answer = StripSearch.Solve(new(width, pieces), new(Iterations: Fillings), null, CancellationToken.None);
        return answer.Height < spots.Max(s => s.Place.Top) && answer.Spots.Count == spots.Count
            ? [.. answer.Spots.Select(s => new Spot(kept[s.Piece], s.Place, s.Turned))]
            : spots;
    }
}
