using System.Security.Cryptography;
using System.Text;
using Laydown.Formats.TiffWriting;
using Laydown.Press.Conditions;
using Laydown.Raster.Sheets;
using Laydown.Shop.Orders;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>The hash of all that goes into the dots of a run: its inputs, the bytes of its artwork and profiles as they lie there now, and the program.</summary>
internal static class DotIdentity
{
    /// <summary>SHA-256, lower-case hex; equal only where the dots will be.</summary>
    public static async Task<string> OfAsync(RunContext context, DotsWish wish, CancellationToken cancellation)
    {
        StringBuilder all = new();
        all.Append(await RunContexts.HashAsync(context, cancellation));
        all.Append(Invariant($"|{wish.Bits}|{wish.Compression}|{wish.Screen}"));
        foreach (ItemRecord item in context.Items.Where(i => i.LookId is null))
        {
            all.Append('|').Append(await FileHashAsync(item.ArtworkPath, cancellation));
            if (item.BackPath is { } back)
                all.Append('|').Append(await FileHashAsync(back, cancellation));
        }

        all.Append('|').Append(await FileHashAsync(context.ProfilePath, cancellation));
        if (context.Condition.InkLink is { } link)
            all.Append('|').Append(await FileHashAsync(Path.Combine(Path.GetDirectoryName(context.ProfilePath) ?? "", Path.GetFileName(link)), cancellation));

        // Any change of the code that makes dots or files is another program.
        foreach (Type part in new[] { typeof(SheetEngine), typeof(DotTiffWriter), typeof(DotIdentity), typeof(PrintCondition) })
            all.Append('|').Append(part.Module.ModuleVersionId);
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(all.ToString())));
    }

    private static async Task<string> FileHashAsync(string path, CancellationToken cancellation)
    {
        if (!File.Exists(path))
            return "none";
        await using FileStream stream = File.OpenRead(path);
        return Convert.ToHexStringLower(await SHA256.HashDataAsync(stream, cancellation));
    }
}
