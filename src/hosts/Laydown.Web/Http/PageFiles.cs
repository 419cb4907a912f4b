using System.Collections.Frozen;
using System.Reflection;
using System.Security.Cryptography;
using Microsoft.Net.Http.Headers;

namespace Laydown.Web.Http;

/// <summary>Styles, scripts and fonts of the page, carried inside the assembly so that any program can host it.</summary>
public static class PageFiles
{
    private const string Prefix = "page/";
    private static readonly FrozenDictionary<string, PageFile> Files = Read();

    /// <summary>Answers <c>/page/{name}</c>, and the script of interactive pages at the address it expects.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapGet("/page/{name}", (string name, HttpContext context) => Answer(name, context));
        routes.MapGet("/_framework/blazor.web.js", (HttpContext context) => Answer("blazor.web.js", context));
    }

    /// <summary>Address of a file, with a mark of its content so that browsers may keep it for good.</summary>
    /// <exception cref="ArgumentException">The assembly carries no such file.</exception>
    public static string Address(string name) => Files.TryGetValue(name, out PageFile? file)
        ? Invariant($"/page/{name}?v={file.Mark}")
        : throw new ArgumentException(Invariant($"Page file: found '{name}'; wanted one of {string.Join(", ", Files.Keys)}."), nameof(name));

    private static IResult Answer(string name, HttpContext context)
    {
        if (!Files.TryGetValue(name, out PageFile? file))
            return Results.NotFound();
        context.Response.Headers.CacheControl = context.Request.Query.ContainsKey("v") ? "public, max-age=31536000, immutable" : "no-cache";
        return Results.Bytes(file.Bytes, file.Type, entityTag: new EntityTagHeaderValue(Invariant($"\"{file.Mark}\"")));
    }

    private static FrozenDictionary<string, PageFile> Read()
    {
        Assembly assembly = typeof(PageFiles).Assembly;
        return assembly.GetManifestResourceNames().Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .ToFrozenDictionary(n => n[Prefix.Length..], n => ReadOne(assembly, n), StringComparer.Ordinal);
    }

    private static PageFile ReadOne(Assembly assembly, string name)
    {
        using Stream stream = assembly.GetManifestResourceStream(name) ?? throw new InvalidOperationException(name);
        using MemoryStream copy = new();
        stream.CopyTo(copy);
        byte[] bytes = copy.ToArray();
        return new(bytes, TypeOf(name), Convert.ToHexStringLower(SHA256.HashData(bytes))[..12]);
    }

    private static string TypeOf(string name) => Path.GetExtension(name) switch
    {
        ".css" => "text/css; charset=utf-8",
        ".js" => "text/javascript; charset=utf-8",
        ".svg" => "image/svg+xml",
        ".otf" => "font/otf",
        _ => "application/octet-stream",
    };

    private sealed record PageFile(byte[] Bytes, string Type, string Mark);
}
