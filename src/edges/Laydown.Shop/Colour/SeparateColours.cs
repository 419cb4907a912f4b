using Laydown.Colour.Inversion;
using Laydown.Colour.Spaces;
using Laydown.Measures;

namespace Laydown.Shop.Colour;

/// <summary>Inks for colours; needs no shop.</summary>
/// <param name="files">Reads the file.</param>
public sealed class SeparateColours(IColourFiles files)
{
    private const double MetDeltaE = 0.5;

    /// <summary>Inks for the colours of a CSV file with columns L, a, b.</summary>
    /// <param name="print">The model.</param>
    /// <param name="path">The file.</param>
    /// <param name="wish">Limits and black.</param>
    /// <param name="relative">Whether the colours are given relative to the bare stock, which then is 100, 0, 0.</param>
    /// <param name="progress">Told the share done, 0 to 1.</param>
    /// <param name="cancellation">Stops between colours.</param>
    public Task<Reading<IReadOnlyList<SeparatedColour>>> SeparateAsync(
        PrintModel print, string path, SeparationWish wish, bool relative, IProgress<double>? progress, CancellationToken cancellation) =>
        Task.Run(
            () => files.Numbers(path, ["L", "a", "b"]).Then(table => Separate(
                print, table.File, relative ? [.. table.Rows.Select(r => Absolute(print, r))] : table.Rows, wish, progress, cancellation)),
            cancellation);

    /// <summary>Inks for colours at hand.</summary>
    /// <param name="print">The model.</param>
    /// <param name="rows">L*, a*, b* against the perfect diffuser.</param>
    /// <param name="wish">Limits and black.</param>
    /// <param name="cancellation">Stops between colours.</param>
    public static Reading<IReadOnlyList<SeparatedColour>> Separate(
        PrintModel print, IReadOnlyList<IReadOnlyList<double>> rows, SeparationWish wish, CancellationToken cancellation) =>
        Separate(print, "list", [.. rows.Select((r, i) => new NumberRow(i + 1, "", r ?? []))], wish, null, cancellation);

    private static Reading<IReadOnlyList<SeparatedColour>> Separate(
        PrintModel print, string file, IReadOnlyList<NumberRow> rows, SeparationWish wish, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (rows.FirstOrDefault(r => r.Values.Count != 3 || !(r.Values[0] is >= 0 and <= 150) || !(Math.Abs(r.Values[1]) <= 200) || !(Math.Abs(r.Values[2]) <= 200)) is { } wrong)
        {
            return Reading.Refused<IReadOnlyList<SeparatedColour>>(new InputFault(
                file, null, Invariant($"line {wrong.Line}"), string.Join(", ", wrong.Values.Select(v => Invariant($"{v}"))), "L* 0 to 150, a* and b* −200 to 200"));
        }

        return wish.Limits(print.InkNames).Then(limits =>
        {
            InkInverse inverse = ProfileTableMaker.InverseFor(print.Model, limits, wish.Policy(), InkWishes.For(print.InkNames));
            SeparatedColour[] all = new SeparatedColour[rows.Count];
            int done = 0;
            Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            {
                all[i] = Separate(print, inverse, rows[i].Name, new(rows[i].Values[0], rows[i].Values[1], rows[i].Values[2]));
                progress?.Report(Interlocked.Increment(ref done) / (double)all.Length);
            });
            return Reading.Of<IReadOnlyList<SeparatedColour>>(all);
        });
    }

    private static NumberRow Absolute(PrintModel print, NumberRow row)
    {
        Lab lab = print.Absolute(new(row.Values[0], row.Values[1], row.Values[2]));
        return row with { Values = [lab.L, lab.A, lab.B] };
    }

    /// <summary>Inks for one colour against the perfect diffuser.</summary>
    internal static SeparatedColour Separate(PrintModel print, InkInverse inverse, string name, Lab wanted)
    {
        double[] inks = new double[print.InkNames.Count];
        inverse.Solve(print.Relative(wanted), inks, [.. inverse.EverywhereStarts]);
        Lab predicted = print.Model.ToLab(inks);
        double apart = Ciede2000.Between(wanted, predicted);
        return new(name, wanted, inks, predicted, apart, apart <= MetDeltaE);
    }
}
