using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Shop.Artwork;
using Xunit;

namespace Laydown.Edges.Tests.Artwork;

/// <summary>A folder for one test, with the reader and renderer working in it.</summary>
public sealed class WorkFolder : IDisposable
{
    /// <summary>Profiles that come with Ghostscript, which must be there for these tests anyway.</summary>
    private const string Profiles = "/usr/share/color/icc/ghostscript/";

    public string Folder { get; } = Directory.CreateTempSubdirectory("laydown-artwork-").FullName;

    public string Scratch => Path.Combine(Folder, "scratch");

    public IntakeLimits Limits => new(Scratch);

    public static string CmykProfile => Profiles + "default_cmyk.icc";

    public static string RgbProfile => Profiles + "a98.icc";

    public ArtworkReader Reader => new(Limits);

    public PageRenderer Renderer => new(Limits);

    public string File(string name) => Path.Combine(Folder, name);

    public string Write(string name, byte[] bytes)
    {
        System.IO.File.WriteAllBytes(File(name), bytes);
        return File(name);
    }

    /// <summary>A request whose printed size gives exactly these pixels at this resolution.</summary>
    public static RenderRequest Request(string path, int width, int height, double ppi, double bleedMm = 0) =>
        new(path, 1, new SizeMm(width * 25.4 / ppi, height * 25.4 / ppi), bleedMm, ppi, CmykProfile);

    /// <summary>One plate of a rendered page.</summary>
    public static byte[] Plate(RenderedPage page, string name)
    {
        int index = page.Plates.ToList().IndexOf(name);
        Assert.True(index >= 0, Invariant($"Plates: {string.Join(", ", page.Plates)}; wanted {name}."));
        int size = page.Width * page.Height;
        return System.IO.File.ReadAllBytes(page.RawPath).AsSpan(index * size, size).ToArray();
    }

    /// <summary>What an independent program prints.</summary>
    public static async Task<string> RunAsync(string program, string input, params string[] arguments)
    {
        var start = new System.Diagnostics.ProcessStartInfo(program) { RedirectStandardOutput = true, RedirectStandardInput = true, RedirectStandardError = true };
        foreach (string argument in arguments)
            start.ArgumentList.Add(argument);
        using var child = System.Diagnostics.Process.Start(start)!;
        var errors = child.StandardError.ReadToEndAsync();
        await child.StandardInput.WriteAsync(input);
        child.StandardInput.Close();
        string output = await child.StandardOutput.ReadToEndAsync();
        await child.WaitForExitAsync();
        Assert.True(child.ExitCode == 0, program + ": " + await errors);
        return output;
    }

    public void Dispose() => Directory.Delete(Folder, recursive: true);
}
