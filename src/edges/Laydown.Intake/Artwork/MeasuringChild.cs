using System.ComponentModel;
using System.Diagnostics;
using System.Text.Json;
using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>
/// Measures the structure of PDFs and drawings in another process of ours, where a parser that never ends can be ended, and one that asks for ever more
/// memory takes nothing down with it. One process serves file after file, so that starting it is paid once.
/// </summary>
/// <remarks>
/// Path and limits go to the child as one line; back come the length of the answer in bytes as a line, and the answer: an artwork record, or faults. A child
/// that answers late, not at all or not in these words is ended with a fault, and the next file gets a new one. It is ended when it has been idle for a
/// while, and ends by itself when its parent is gone.
/// </remarks>
internal sealed class MeasuringChild : IDisposable
{
    private const int EndingMs = 500;
    private const int IdleMs = 20_000;
    private readonly IntakeLimits limits;
    private readonly SemaphoreSlim one = new(1);
    private readonly Timer idle;
    private Process? child;

    /// <summary>Starts nothing yet: the process comes with the first file.</summary>
    /// <param name="limits">Program, time and memory.</param>
    public MeasuringChild(IntakeLimits limits)
    {
        this.limits = limits;
        idle = new Timer(_ => EndIdle());
    }

    /// <summary>Whether measuring in another process is wanted.</summary>
    public bool IsWanted => limits.Measurer.Count > 0;

    /// <summary>The pages of a file, or why it cannot be taken.</summary>
    /// <exception cref="OperationCanceledException">Cancelled; the child is gone by then.</exception>
    public async Task<Reading<ArtworkFile>> MeasureAsync(string path, CancellationToken cancellation)
    {
        await one.WaitAsync(cancellation);
        using var clock = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        clock.CancelAfter(TimeSpan.FromSeconds(limits.ChildSeconds));
        bool answered = false;
        try
        {
            child ??= Begin();
            var answer = await MeasuringTalk.AskAsync(child.StandardInput, child.StandardOutput.BaseStream, Path.GetFullPath(path), limits with { Measurer = [] }, clock.Token);
            answered = true;
            return answer;
        }
        catch (OperationCanceledException) when (!cancellation.IsCancellationRequested)
        {
            return Refused(path, "time to read", Invariant($"more than {limits.ChildSeconds} s"), Invariant($"at most {limits.ChildSeconds} s"));
        }
        catch (Exception failure) when (failure is IOException or InvalidDataException or JsonException)
        {
            return Refused(
                path, "reading", "a reader that ended without an answer (" + How() + ")", Invariant($"a file that can be read within {limits.MeasurerBytes >> 20} MiB of memory"));
        }
        catch (Win32Exception)
        {
            return Refused(path, "reading", Invariant($"no program '{limits.Measurer[0]}' on this machine"), "the program that reads files");
        }
        finally
        {
            if (!answered)
                End();
            idle.Change(IdleMs, Timeout.Infinite);
            one.Release();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        // No child is begun or ended by others any more once this holds the one place; it is kept.
        one.Wait();
        idle.Dispose();
        End();
    }

    private static Reading<ArtworkFile> Refused(string path, string field, string found, string wanted) =>
        Reading.Refused<ArtworkFile>(new InputFault(Path.GetFileName(path), null, field, found, wanted));

    private string How() => child is { } ended && ended.WaitForExit(EndingMs) ? Invariant($"exit code {ended.ExitCode}") : "it talks on";

    /// <summary>A process that has had nothing to do for a while takes no memory any longer.</summary>
    private void EndIdle()
    {
        if (!one.Wait(0))
            return;
        End();
        one.Release();
    }

    private void End()
    {
        if (child is null)
            return;
        if (!child.HasExited)
            child.Kill(entireProcessTree: true);
        child.WaitForExit();
        child.Dispose();
        child = null;
    }

    private Process Begin()
    {
        var start = new ProcessStartInfo(limits.Measurer[0])
        {
            UseShellExecute = false,
            CreateNoWindow = true,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        foreach (string argument in limits.Measurer.Skip(1))
            start.ArgumentList.Add(argument);
        start.Environment["DOTNET_GCHeapHardLimit"] = Invariant($"0x{limits.MeasurerBytes:X}");
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        start.Environment["DOTNET_gcServer"] = "0";

        // Its last words are of no use to an operator, but must not fill the pipe.
        var begun = Process.Start(start)!;
        begun.BeginErrorReadLine();
        return begun;
    }
}
