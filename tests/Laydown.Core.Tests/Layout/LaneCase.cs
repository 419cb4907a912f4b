using Laydown.Layout.Lanes;
using Laydown.Layout.Sheets;

namespace Laydown.Core.Tests.Layout;

/// <summary>A belt and sheets to be laid on it, drawn from a seed; whole millimetres.</summary>
internal sealed record LaneCase(Belt Belt, IReadOnlyList<int> Widths, bool AnyOrder)
{
    public IReadOnlyList<LaneBlank> Blanks => [.. Widths.Select((w, i) => new LaneBlank(Invariant($"b{i}"), new(w, 400), 1))];

    public static LaneCase Draw(int seed)
    {
        Random chance = new(seed);
        int count = 1 + (seed % 6), zones = 4 + chance.Next(9);
        List<BeltZone> rows = [];
        int at = chance.Next(30);
        for (int i = 0; i < zones; i++)
        {
            int width = 60 + chance.Next(2400 / zones);
            rows.Add(new(Invariant($"Z{i}"), at, width));
            at += width + (chance.Next(2) * chance.Next(25));
        }

        int pitch = 25 * (1 + chance.Next(6)), most = at / pitch;
        double[] lays = chance.Next(2) == 0
            ? [.. Enumerable.Range(0, 12).Select(i => (double)(i * Math.Max(1, most / 12) * pitch)).Distinct()]
            : [.. Enumerable.Range(0, 11).Select(_ => (double)chance.Next(at)).Distinct().Order()];
        double[]? pins = chance.Next(3) > 0 ? null : [.. Enumerable.Range(0, at / 60).Select(i => i * 60.0)];
        int widest = Math.Max(60, at / count);
        bool equal = chance.Next(3) == 0;
        int first = 50 + chance.Next(widest);
        int[] widths = [.. Enumerable.Range(0, count).Select(_ => equal ? first : 50 + chance.Next(widest))];
        Belt belt = new(at, 3000, rows, lays, count, 5 * chance.Next(5), 60 + (10 * chance.Next(4)), 20 + chance.Next(80), (LoadSide)chance.Next(3), pins);
        return new(belt, widths, chance.Next(2) == 0);
    }
}
