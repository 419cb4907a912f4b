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
        Task.Run(() => wish.Limits(print.InkNames).Then(limits => files.Numbers(path, ["L", "a", "b"]).Then(table =>
        {
            if (table.Rows.FirstOrDefault(r => r.Values[0] is < 0 or > 150 || Math.Abs(r.Values[1]) > 200 || Math.Abs(r.Values[2]) > 200) is { } wrong)
            {
                return Reading.Refused<IReadOnlyList<SeparatedColour>>(new InputFault(
                    table.File, null, Invariant($"line {wrong.Line}"), string.Join(", ", wrong.Values.Select(v => Invariant($"{v}"))), "L* 0 to 150, a* and b* −200 to 200"));
            }

            InkInverse inverse = new(print.Model, limits, wish.Policy(), InkWishes.For(print.InkNames));
            SeparatedColour[] all = new SeparatedColour[table.Rows.Count];
            int done = 0;
            Parallel.For(0, all.Length, new ParallelOptions { CancellationToken = cancellation }, i =>
            {
                Lab wanted = new(table.Rows[i].Values[0], table.Rows[i].Values[1], table.Rows[i].Values[2]);
                all[i] = Separate(print, inverse, table.Rows[i].Name, relative ? print.Absolute(wanted) : wanted);
                progress?.Report(Interlocked.Increment(ref done) / (double)all.Length);
            });
            return Reading.Of<IReadOnlyList<SeparatedColour>>(all);
        })), cancellation);

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
