using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary><c>laydown run compare FOLDER FOLDER</c>: what differs between two makes of a run.</summary>
internal static class RunCompareCommand
{
    public static Command Make(Shared shared)
    {
        Argument<string> first = new("first") { Description = "Folder of one make of a run." };
        Argument<string> second = new("second") { Description = "Folder of another." };
        Command command = new("compare", "Compares the files of two makes of a run, press files dot by dot; ends with 1 where they differ.") { first, second };
        command.SetAction((parsed, cancellation) => Task.Run(
            () => Tell(shared.Answer(parsed), Path.GetFullPath(parsed.GetRequiredValue(first)), Path.GetFullPath(parsed.GetRequiredValue(second)), cancellation), cancellation));
        return command;
    }

    private static int Tell(Answer answer, string first, string second, CancellationToken cancellation)
    {
        Reading<IReadOnlyList<FileDifference>> compared = Wiring.MakeComparison().Compare(first, second, cancellation);
        if (!compared.IsTaken)
            return answer.Fail(ExitCodes.Refused, "The two makes cannot be compared.", compared.Faults);
        bool same = compared.Value.All(f => !f.Matters);
        if (answer.AsJson)
            answer.Json("comparison", new { first, second, same, files = compared.Value });
        else
            Show(answer, compared.Value, same);
        return same ? ExitCodes.Done : ExitCodes.Held;
    }

    private static void Show(Answer answer, IReadOnlyList<FileDifference> files, bool same)
    {
        answer.Table(["file", "is", "differ", "%", "first, row", "column", "largest"], files.Select(f => (IReadOnlyList<string>)
        [
            f.Name, Words(f.Is), f.Pixels is { } p ? Invariant($"{p.Different}") : "", f.Pixels is { } q ? Invariant($"{q.Percent:0.####}") : "",
            f.Pixels is { } r ? Invariant($"{r.FirstRow}") : "", f.Pixels is { } s ? Invariant($"{s.FirstColumn}") : "", f.Pixels is { } t ? Invariant($"{t.Largest}") : "",
        ]));
        foreach ((FileDifference file, InkDifference ink) in files.SelectMany(f => (f.Pixels?.Inks ?? []).Where(i => i.Different > 0).Select(i => (f, i))))
            answer.Line(Invariant($"{file.Name}, {ink.Ink}: {ink.Different} differ; mean {ink.FirstMean:0.####} and {ink.SecondMean:0.####}"));
        answer.Line(same ? "The two makes are the same to the press." : "The two makes differ.");
    }

    private static string Words(Sameness sameness) => sameness switch
    {
        Sameness.SameBytes => "same bytes",
        Sameness.SamePixels => "same pixels",
        Sameness.OtherPixels => "other pixels",
        Sameness.OtherShape => "another shape",
        Sameness.OtherBytes => "other bytes",
        Sameness.OnlyFirst => "only in the first",
        _ => "only in the second",
    };
}
