using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.StockRoom;
using Laydown.Shop.Press;

namespace Laydown.Cli.Press;

/// <summary><c>laydown stock</c>: the stock room, and what is done in it.</summary>
internal static class StockCommand
{
    public static Command Make(Shared shared)
    {
        Option<string?> file = new("--file") { Description = "Look at this file alone and do its moves, JSON as in schemas/stock-room.schema.json, without a shop; nothing is written." };
        Command command = new("stock", "The stock room: what is there, kept back, wanted, to be ordered.")
        {
            file, Receive(shared), OfRun(shared, "reserve", "Keeps back what a run needs, oldest lots first.", RunStockStep.Reserve),
            OfRun(shared, "release", "Gives free what is kept back for a run.", RunStockStep.Release),
            OfRun(shared, "take", "Takes what is kept back for a run and brings its usable rests in as lots of their own.", RunStockStep.Take),
            OfLot(shared, "count", "Writes down what was counted of a lot.", StockMoveKind.Count), OfLot(shared, "use", "Takes from a lot, as for spoilt boards.", StockMoveKind.Consume),
            OfLot(shared, "add", "Adds to a lot.", StockMoveKind.Receive), Put(shared), StockReorderCommand.Make(shared), Labels(shared),
        };
        command.SetAction((parsed, cancellation) => parsed.GetValue(file) is { } path
            ? FromFileAsync(shared.Answer(parsed), Path.GetFullPath(path))
            : shared.InShopAsync(parsed, async (shop, answer) => Show(answer, await shop.Press.Stock.ShowAsync(cancellation)), cancellation));
        return command;
    }

    private static async Task<int> FromFileAsync(Answer answer, string path)
    {
        await Task.Yield();
        Reading<StockRoomFile> read = Wiring.CareFiles().Room(path);
        Reading<StockView> view = read.Then(r => StockMoves.Do(r.Lots, r.Moves, r.Stocks).Then(change =>
        {
            IReadOnlyList<StockLot> lots = [.. r.Lots.Where(l => change.Lots.All(c => c.Id != l.Id)).Concat(change.Lots).OrderBy(l => l.Id, StringComparer.Ordinal)];
            return Reading.Of(new StockView(StockLines.Of(r.Stocks, lots, []), lots, change.Moves));
        }));
        return view.IsTaken ? Show(answer, view.Value) : answer.Fail(ExitCodes.Refused, Invariant($"{Path.GetFileName(path)}: nothing is done."), view.Faults);
    }

    private static int Show(Answer answer, StockView view)
    {
        if (answer.AsJson)
        {
            answer.Json("stock-room-view", view);
            return ExitCodes.Done;
        }

        answer.Table(["stock", "on hand", "kept back", "free", "wanted", "order at", "order"], view.Lines.Select(l => (IReadOnlyList<string>)
            [l.StockId, Invariant($"{l.OnHand:0.##} {l.Unit}"), Invariant($"{l.Reserved:0.##}"), Invariant($"{l.Free:0.##}"), Invariant($"{l.Wanted:0.##}"),
                l.ReorderAt is { } point ? Invariant($"{point}{(l.IsLow ? ", low" : "")}") : "–",
                l.Rolls is > 0 ? Invariant($"{l.ToOrder:0.##} ({l.Rolls} roll{(l.Rolls == 1 ? "" : "s")})") : Invariant($"{l.ToOrder:0.##}")]), named: true);
        foreach (StockLine line in view.Lines.Where(l => l.OrderWords is not null))
            answer.Line(Invariant($"{line.StockId}: {line.OrderWords}"));
        answer.Table(["lot", "stock", "size, mm", "on hand", "free", "place", "since"], view.Lots.Select(l => (IReadOnlyList<string>)
            [l.Id, l.StockId, Invariant($"{l.WidthMm:0} × {l.LengthMm:0}"), Invariant($"{l.OnHand:0.##}"), Invariant($"{l.Free:0.##}"), l.Place, Invariant($"{l.Since:yyyy-MM-dd}")]), named: true);
        if (view.Runs is { Count: > 0 } runs)
            answer.Table(["run", "stock", "needs", "kept back", "used", "taken"], runs.Select(r => (IReadOnlyList<string>)
                [r.RunId, r.StockId, Invariant($"{r.Needed:0.##} {r.Unit}"), Invariant($"{r.KeptBack:0.##}"), r.Used is { } used ? Invariant($"{used:0.##}") : "–", Invariant($"{r.Taken:0.##}")]), named: true);
        return ExitCodes.Done;
    }

    private static Command Receive(Shared shared)
    {
        Argument<string> stock = new("stock") { Description = "Id of the stock." };
        Argument<decimal> quantity = new("quantity") { Description = "Boards or blanks, whole; of a roll metres." };
        Option<string> place = new("--place") { Description = "Where they are put.", Required = true };
        Option<string?> maker = new("--lot") { Description = "Number of the maker's lot." };
        Option<double?> width = new("--width") { Description = "Width of a rest, mm (default: the stock's)." };
        Option<double?> length = new("--length") { Description = "Length of a rest, mm (default: the stock's)." };
        Option<string> by = By();
        Command command = new("receive", "Takes goods in as a new lot.") { stock, quantity, place, maker, width, length, by };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) => Told(answer, await shop.Press.Receive.ReceiveAsync(
                new(parsed.GetRequiredValue(stock), parsed.GetValue(quantity), parsed.GetRequiredValue(place), parsed.GetRequiredValue(by), parsed.GetValue(maker), parsed.GetValue(width), parsed.GetValue(length)), cancellation)),
            cancellation));
        return command;
    }

    private static Command OfRun(Shared shared, string name, string words, RunStockStep step)
    {
        Argument<string> run = new("run") { Description = "Id of the run." };
        Option<string?> place = new("--place") { Description = "Where rests are put." };
        Option<string> by = By();
        Command command = new(name, words) { run, by };
        if (step == RunStockStep.Take)
            command.Options.Add(place);
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) => Told(answer, await shop.Press.RunStock.DoAsync(
                parsed.GetRequiredValue(run), step, parsed.GetRequiredValue(by), step == RunStockStep.Take ? parsed.GetValue(place) : null, cancellation)),
            cancellation));
        return command;
    }

    private static Command OfLot(Shared shared, string name, string words, StockMoveKind kind)
    {
        Argument<string> lot = new("lot") { Description = "Id of the lot." };
        Argument<decimal> quantity = new("quantity") { Description = "Boards or blanks, whole; of a roll metres." };
        Option<string?> why = new("--why") { Description = "Why." };
        Option<string> by = By();
        Command command = new(name, words) { lot, quantity, why, by };
        command.SetAction((parsed, cancellation) => DoAsync(
            shared, parsed, now => new(kind, parsed.GetRequiredValue(lot), parsed.GetValue(quantity), now, parsed.GetRequiredValue(by), Why: parsed.GetValue(why)), cancellation));
        return command;
    }

    private static Command Put(Shared shared)
    {
        Argument<string> lot = new("lot") { Description = "Id of the lot." };
        Argument<string> place = new("place") { Description = "Where it stands now." };
        Option<string> by = By();
        Command command = new("put", "Puts a lot to another place.") { lot, place, by };
        command.SetAction((parsed, cancellation) => DoAsync(
            shared, parsed, now => new(StockMoveKind.Place, parsed.GetRequiredValue(lot), 0, now, parsed.GetRequiredValue(by), Place: parsed.GetRequiredValue(place)), cancellation));
        return command;
    }

    private static Command Labels(Shared shared)
    {
        Argument<string[]> lots = new("lots") { Description = "Lots; all that are not used up without.", Arity = ArgumentArity.ZeroOrMore };
        Option<string> file = new("--out") { Description = "The PDF to write.", DefaultValueFactory = _ => "stock-labels.pdf" };
        Command command = new("labels", "Writes labels of lots as PDF, each with a code.") { lots, file };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                Reading<byte[]> made = await shop.Press.Labels.MakeAsync(parsed.GetValue(lots) ?? [], cancellation);
                if (!made.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "No label was written.", made.Faults);
                string path = Path.GetFullPath(parsed.GetRequiredValue(file));
                await StockLabels.SaveAsync(path, made.Value, cancellation);
                if (answer.AsJson)
                    answer.Json("stock-labels", new { file = path });
                else
                    answer.Line(path);
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }

    private static Task<int> DoAsync(Shared shared, ParseResult parsed, Func<DateTimeOffset, StockMove> move, CancellationToken cancellation) => shared.InShopAsync(
        parsed,
        async (shop, answer) => Told(answer, await shop.Press.Move.DoAsync(_ => Reading.Of<IReadOnlyList<StockMove>>([move(shared.Now(parsed))]), cancellation)),
        cancellation);

    private static int Told(Answer answer, Reading<StockChange> change)
    {
        if (!change.IsTaken)
            return answer.Fail(ExitCodes.Refused, "Nothing is done in the stock room.", change.Faults);
        if (answer.AsJson)
            answer.Json("stock-change", change.Value);
        else if (change.Value.Lots.Count == 0)
            answer.Line("Nothing was left to do.");
        else
            answer.Table(["lot", "stock", "on hand", "free", "place"], change.Value.Lots.Select(l => (IReadOnlyList<string>)[l.Id, l.StockId, Invariant($"{l.OnHand:0.##}"), Invariant($"{l.Free:0.##}"), l.Place]), named: true);
        return ExitCodes.Done;
    }

    private static Option<string> By() => new("--by") { Description = "Who does it.", DefaultValueFactory = _ => "operator" };
}
