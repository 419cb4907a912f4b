using System.Diagnostics;
using Laydown.Demo;

namespace Laydown.Edges.Tests.Demo;

/// <summary>The demo world, drawn once for all tests that look at it; profiles are another room's.</summary>
public sealed class DemoShop : IDisposable
{
    public DemoShop() => DemoWorld.WithoutProfiles(Folder, DemoWorld.Day, CancellationToken.None);

    public string Folder { get; } = Path.Combine(Path.GetTempPath(), "laydown-demo-" + Guid.NewGuid().ToString("N"));

    public string Orders => Path.Combine(Folder, "orders");

    public string Catalogue => Path.Combine(Folder, "catalogue");

    public void Dispose() => Directory.Delete(Folder, recursive: true);

    public string File(string name) => Directory.GetFiles(Orders, name, SearchOption.AllDirectories).Single();

    /// <summary>Runs a program of the machine and gives what it says; a missing one throws.</summary>
    public static (int Code, string Said) Run(string program, params string[] arguments)
    {
        ProcessStartInfo start = new(program) { RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in arguments)
            start.ArgumentList.Add(argument);
        using Process process = Process.Start(start)!;
        Task<string> errors = process.StandardError.ReadToEndAsync();
        string said = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, said + errors.Result);
    }

    /// <summary>One page as Ghostscript draws it.</summary>
    public string Render(string pdf, int page, int ppi)
    {
        string png = Path.Combine(Folder, Invariant($"{Path.GetFileNameWithoutExtension(pdf)}-{page}-{ppi}.png"));
        (int code, string said) = Run("gs", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-q", "-sDEVICE=png16m", Invariant($"-r{ppi}"), Invariant($"-dFirstPage={page}"), Invariant($"-dLastPage={page}"), "-o", png, pdf);
        return code == 0 ? png : throw new InvalidOperationException(said);
    }

    /// <summary>Plates of one page as Ghostscript's separation device makes them: name by file.</summary>
    public Dictionary<string, string> Plates(string pdf, int page, int ppi)
    {
        string name = Path.Combine(Folder, Invariant($"{Path.GetFileNameWithoutExtension(pdf)}-{page}-plates"));
        (int code, string said) = Run(
            "gs", "-dSAFER", "-dBATCH", "-dNOPAUSE", "-q", "-sDEVICE=tiffsep", "-dMaxSpots=40", Invariant($"-r{ppi}"), Invariant($"-dFirstPage={page}"), Invariant($"-dLastPage={page}"), "-o", name + ".tif", pdf);
        if (code != 0)
            throw new InvalidOperationException(said);
        return Directory.GetFiles(Folder, Path.GetFileName(name) + "(*).tif").ToDictionary(f => f[(f.LastIndexOf('(') + 1)..f.LastIndexOf(')')]);
    }
}
