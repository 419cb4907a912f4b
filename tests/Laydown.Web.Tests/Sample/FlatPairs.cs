using System.Runtime.InteropServices;
using Laydown.Measures;
using Laydown.Shop.Layers;

namespace Laydown.Web.Tests.Sample;

/// <summary>Stands in for the reader of pairs: a light sky over darker water by day, dark with a bright middle at night.</summary>
internal sealed class FlatPairs(string scratch) : IPairPictures
{
    public async Task<Reading<PairFile>> ReadAsync(PairRequest request, IProgress<double>? progress, CancellationToken cancellation)
    {
        if (request.Wish.Night.Page > 2)
            return Reading.Refused<PairFile>(new InputFault(request.Wish.Night.File, request.Wish.Night.Page, "page", "no such page", "a page of the artwork"));
        int width = (int)Math.Round(request.Printed.WidthMm * request.Ppi / 25.4), height = (int)Math.Round(request.Printed.HeightMm * request.Ppi / 25.4);
        Directory.CreateDirectory(scratch);
        string[] paths = [.. Enumerable.Range(0, 2).Select(_ => Path.Combine(scratch, Invariant($"{Guid.NewGuid():N}.raw")))];
        for (int picture = 0; picture < 2; picture++)
        {
            ushort[] codes = new ushort[3 * width * height];
            for (int at = 0; at < width * height; at++)
            {
                double u = at % width / (double)width, v = at / width / (double)height;
                double l = picture == 0 ? 90 - (40 * v) : (Math.Abs(u - 0.5) < 0.2 && Math.Abs(v - 0.5) < 0.2 ? 85 : 15);
                (codes[3 * at], codes[(3 * at) + 1], codes[(3 * at) + 2]) = ((ushort)(l * 655.35), (ushort)((128 - (8 * v)) * 257), (ushort)((128 - (20 * u)) * 257));
            }

            await File.WriteAllBytesAsync(paths[picture], MemoryMarshal.AsBytes(codes.AsSpan()).ToArray(), cancellation);
        }

        progress?.Report(1);
        return Reading.Of(new PairFile(width, height, paths[0], paths[1], []));
    }
}
