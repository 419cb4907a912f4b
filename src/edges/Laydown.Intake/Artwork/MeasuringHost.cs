using System.Runtime.ExceptionServices;
using Laydown.Artwork.Pages;
using Laydown.Measures;

namespace Laydown.Intake.Artwork;

/// <summary>The other side of measuring in a process of its own: what that process runs.</summary>
public static class MeasuringHost
{
    /// <summary>Measures file after file, as it is asked, until the questions end.</summary>
    /// <param name="questions">One a line.</param>
    /// <param name="answers">Takes the answers; nothing else may be written there.</param>
    public static Task RunAsync(TextReader questions, Stream answers) => MeasuringTalk.AnswerAsync(questions, answers, MeasureAsync);

    /// <summary>Measures a file; where memory ran out on the way nothing else is believed, as the parser goes on without the part that did not fit.</summary>
    private static async Task<Reading<ArtworkFile>> MeasureAsync(string path, IntakeLimits limits)
    {
        bool ranOut = false;
        void Note(object? sender, FirstChanceExceptionEventArgs thrown) => ranOut |= thrown.Exception is OutOfMemoryException;
        AppDomain.CurrentDomain.FirstChanceException += Note;
        try
        {
            using var reader = new ArtworkReader(limits);
            var read = await reader.StructureAsync(path, CancellationToken.None);
            return ranOut ? RanOut(path, limits) : read;
        }
        catch (Exception) when (ranOut)
        {
            return RanOut(path, limits);
        }
        finally
        {
            AppDomain.CurrentDomain.FirstChanceException -= Note;
        }
    }

    private static Reading<ArtworkFile> RanOut(string path, IntakeLimits limits) => Reading.Refused<ArtworkFile>(new InputFault(
        Path.GetFileName(path), null, "memory to read", Invariant($"more than {limits.MeasurerBytes >> 20} MiB"), Invariant($"at most {limits.MeasurerBytes >> 20} MiB")));
}
