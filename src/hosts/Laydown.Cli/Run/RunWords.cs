using Laydown.Cli.Words;
using Laydown.Layout.Sheets;
using Laydown.Plan.Costs;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;

namespace Laydown.Cli.Run;

/// <summary>Runs as people read them.</summary>
internal static class RunWords
{
    public static void Table(Answer answer, IReadOnlyList<RunRecord> runs) => answer.Table(
        ["run", "press", "stock", "sheets", "items", "minutes", "ml", "price", "due", "state"],
        runs.Select(r => (IReadOnlyList<string>)
        [
            r.Run.Id, r.Run.PressId, r.Run.StockId, Invariant($"{r.Run.SheetCount}"), Invariant($"{r.Run.Items.Count}"),
            Invariant($"{r.Run.Time.TotalMinutes:0.0}"), Invariant($"{r.Run.Inks.Sum(i => i.PrintedMl):0.0}"), r.Run.Cost.Price.ToString(),
            Invariant($"{r.Run.Due:yyyy-MM-dd}"), StateWords.Of(r.State),
        ]));

    public static void Show(Answer answer, RunRecord record, string runsFolder, IReadOnlyList<string> refusals)
    {
        Laydown.Plan.Runs.Run run = record.Run;
        answer.Line(Invariant($"{run.Id}  {StateWords.Of(record.State)}  {run.PressId}, {run.StockId}, mode {run.Mode.ModeId}"));
        if (run.OnPress is { } taken)
            answer.Line(Invariant($"  {taken}"));
        foreach (string refusal in refusals)
            answer.Line(Invariant($"! must not be released as it stands: {refusal}"));
        foreach (string reason in run.Mode.Reasons)
            answer.Line(Invariant($"  {reason}"));
        answer.Line(Invariant($"layers  {run.Stack.Key}"));
        if (run.Sheets.Select(s => s.Faces).OfType<SheetFaces>().FirstOrDefault() is { } faces)
            answer.Line(Invariant($"faces  sheets turned {(faces.Turn == SheetTurn.Sideways ? "left to right" : "head to foot")} as drawn, {(faces.OneFile ? "one file for both faces" : "a file for each face")}, register of {faces.RegisterMm:0.##} mm allowed for"));
        answer.Table(["item", "title", "pieces", "due"], run.Items.Select(i => (IReadOnlyList<string>)
            [i.ItemId, i.Title, i.Asked is { } asked && asked < i.Pieces ? Invariant($"{i.Pieces} ({asked} asked for)") : Invariant($"{i.Pieces}"), Invariant($"{i.Due:yyyy-MM-dd}")]));
        answer.Line(Invariant(
            $"time  set-up {run.Time.SetUpMinutes:0.0} + print {run.Time.PrintMinutes:0.0} + handling {run.Time.HandlingMinutes:0.0} = {run.Time.TotalMinutes:0.0} min{(run.Time.LearntWords is { } words ? ". " + words : "")}"));
        answer.Table(["ink", "channels", "printed ml", "set-up ml"], run.Inks.Select(i => (IReadOnlyList<string>)
            [Invariant($"{i.Role}"), string.Join('+', i.ChannelIds), Invariant($"{i.PrintedMl:0.00}"), Invariant($"{i.SetUpMl:0.00}")]));
        answer.Line(Invariant($"head height over the belt  {(record.LetGo?.HeadGap ?? run.SetUp.HeadGap).Mm:0.0} mm, {(record.LetGo is null ? "until the sheet is measured" : "as measured")}"));
        answer.Line(Invariant($"belt  open {string.Join(' ', run.Belt.OpenZones)}, shut {string.Join(' ', run.Belt.ShutZones)}"));
        Costs(answer, run.Cost);
        string mark = LayoutMark.Short(LayoutMark.Of(run.Sheets));
        answer.Line(Invariant($"layout  {mark}, {(record.Release is { Holds: true } release ? Invariant($"released by {release.By} on {release.At:yyyy-MM-dd HH:mm}") : "not released")}"));
        if (record.FilesAreOld)
            answer.Line(Invariant($"old  the press files were made from layout {LayoutMark.Short(record.FilesLayout!)}; make them again before anything is printed"));
        if (record.FolderName is not null)
            answer.Line(Invariant($"folder  {Path.Combine(runsFolder, record.FolderName)}, {record.Files.Count} files"));
        if (record.Failure is not null)
            answer.Line(Invariant($"aborted  {record.Failure}"));
    }

    private static void Costs(Answer answer, CostSheet cost)
    {
        List<IReadOnlyList<string>> rows = [.. cost.Lines.Select(l => (IReadOnlyList<string>)[l.Name, l.Amount.ToString(), l.Because])];
        rows.Add(["cost", cost.Cost.ToString(), ""]);
        rows.AddRange((cost.OverheadLines ?? [new(Overheads.Whole, OverheadBase.Cost, 0, 0, cost.Overhead, "")]).Select(o => (IReadOnlyList<string>)[o.Name == Overheads.Whole ? o.Name : Invariant($"overhead, {o.Name}"), o.Amount.ToString(), o.Because]));
        rows.Add(["margin", cost.Margin.ToString(), cost.MarginPercent is { } percent ? Invariant($"{percent:0.##} % of the price") : ""]);
        rows.Add(["price", cost.Price.ToString(), ""]);
        answer.Table(["cost", "amount", "because"], rows);
    }
}
