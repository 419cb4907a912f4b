using Laydown.Measures;
using Laydown.Shop;
using Microsoft.AspNetCore.Http.Features;

namespace Laydown.Web.Http;

/// <summary>Takes files of a new order in, one request for each, streamed to the disk; <c>order.json</c> is sent last and is what makes the order count.</summary>
public static class OrderUpload
{
    /// <summary>Most bytes of one file: 8 GiB.</summary>
    public const long MostBytes = 8L << 30;

    /// <summary>Bytes that must stay free on the disk after the file: 1 GiB.</summary>
    public const long KeptFreeBytes = 1L << 30;

    /// <summary>Writes the body to <c>orders/<i>order</i>/<i>name</i></c>, beside and renamed: whole or absent. A file that is there already is never changed.</summary>
    public static async Task<IResult> TakeAsync(string order, string name, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        if (Fault(order, name, shop, context.Request.ContentLength) is { } fault)
            return Refuse(fault, StatusCodes.Status400BadRequest);
        if (context.Features.Get<IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = MostBytes;

        string folder = Path.Combine(new ShopFolder(shop.Folder).Orders, order);
        string path = Path.Combine(folder, name);
        if (File.Exists(path))
            return Refuse(new(name, null, "name", "a file of that name in the order", "a new name; originals are never changed"), StatusCodes.Status409Conflict);
        Directory.CreateDirectory(folder);
        try
        {
            long bytes = await WriteAsync(path, context.Request.Body, cancellation);
            return ShopInterface.Answer("upload", new { Order = order, Name = name, Bytes = bytes }, StatusCodes.Status201Created);
        }
        catch (Exception failure) when (failure is IOException or BadHttpRequestException)
        {
            return Refuse(new(name, null, "body", failure.Message, "the whole file, and room on the disk"), StatusCodes.Status400BadRequest);
        }
    }

    private static async Task<long> WriteAsync(string path, Stream body, CancellationToken cancellation)
    {
        string beside = Path.Combine(Path.GetDirectoryName(path)!, Invariant($".{Path.GetFileName(path)}.{Guid.NewGuid():N}.part"));
        try
        {
            long bytes;
            await using (FileStream file = new(beside, FileMode.CreateNew, FileAccess.Write, FileShare.None, 1, FileOptions.Asynchronous))
            {
                await body.CopyToAsync(file, 1 << 20, cancellation);
                bytes = file.Length;
                file.Flush(flushToDisk: true);
            }

            File.Move(beside, path, overwrite: false);
            return bytes;
        }
        finally
        {
            File.Delete(beside);
        }
    }

    private static InputFault? Fault(string order, string name, ShopServices shop, long? length)
    {
        if (!IsName(order) || order.Contains('.', StringComparison.Ordinal))
            return new(Cut(name), null, "order", Invariant($"'{Cut(order)}'"), "1 to 60 letters, digits, hyphens or underscores");
        if (!IsName(name) || name.StartsWith('.'))
            return new(Cut(name), null, "name", Invariant($"'{Cut(name)}'"), "1 to 60 letters, digits, dots, hyphens or underscores, not starting with a dot");
        if (length is null or > MostBytes)
            return new(name, null, "Content-Length", length is null ? "none" : Invariant($"{length} bytes"), Invariant($"at most {MostBytes} bytes, said beforehand"));
        long free = new DriveInfo(Path.GetFullPath(shop.Folder)).AvailableFreeSpace;
        return free - length < KeptFreeBytes
            ? new(name, null, "Content-Length", Invariant($"{length} bytes with {free} bytes free"), Invariant($"{KeptFreeBytes} bytes left free"))
            : null;
    }

    private static bool IsName(string name) =>
        name.Length is > 0 and <= 60 && name.All(c => char.IsAsciiLetterOrDigit(c) || c is '-' or '_' or '.') && name is not ("." or "..");

    private static string Cut(string text) => new([.. text.Take(60).Select(c => char.IsControl(c) ? '?' : c)]);

    private static IResult Refuse(InputFault fault, int status) => ShopInterface.Answer("fault", fault, status);
}
