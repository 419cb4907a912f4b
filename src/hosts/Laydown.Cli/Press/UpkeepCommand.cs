using System.CommandLine;
using System.Globalization;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Shop;
using Laydown.Shop.Press;

namespace Laydown.Cli.Press;

/// <summary><c>laydown upkeep [--press ID] [--days N] [--file FILE]</c>, <c>upkeep read</c>, <c>upkeep done</c>, <c>upkeep pour</c>, <c>upkeep shelf</c>.</summary>
internal static class UpkeepCommand
{
    public static Command Make(Shared shared)
    {
        Option<string?> press = new("--press") { Description = "Id of the press (default: the first of the shop)." };
        Option<int> days = new("--days") { Description = "Days planned.", DefaultValueFactory = _ => PlanUpkeep.UsualDays };
        Option<string?> file = new("--file") { Description = "Plan from this file alone, JSON as in schemas/upkeep.schema.json, without a shop." };
        Command command = new("upkeep", "Tank levels with top-ups, ink to order, care tasks, long stops of a press along its planned runs.")
        {
            press, days, file, Read(shared), Done(shared), Pour(shared), Shelf(shared),
        };
        command.SetAction((parsed, cancellation) => parsed.GetValue(file) is { } path
            ? FromFileAsync(shared.Answer(parsed), Path.GetFullPath(path))
            : shared.InShopAsync(
                parsed,
                async (shop, answer) => Tell(
                    answer,
                    await shop.Press.Upkeep.PlanAsync(parsed.GetValue(press) ?? shop.Catalogue.Presses[0].Id, shared.Now(parsed), parsed.GetValue(days), cancellation)),
                cancellation));
        return command;
    }

    private static async Task<int> FromFileAsync(Answer answer, string path)
    {
        await Task.Yield();
        return Tell(answer, Wiring.CareFiles().Upkeep(path).Then(r => UpkeepPlanner.Plan(r, Path.GetFileName(path))));
    }

    private static int Tell(Answer answer, Reading<UpkeepPlan> plan)
    {
        if (!plan.IsTaken)
            return answer.Fail(ExitCodes.Refused, "Upkeep cannot be planned.", plan.Faults);
        if (answer.AsJson)
            answer.Json("upkeep-plan", plan.Value);
        else
            UpkeepWords.Tell(answer, plan.Value);
        return ExitCodes.Done;
    }

    private static Command Read(Shared shared)
    {
        Argument<string> press = new("press") { Description = "Id of the press." };
        Argument<string[]> levels = new("levels") { Description = "Levels as read, such as C=1210 W=900, ml.", Arity = ArgumentArity.OneOrMore };
        Option<string[]> poured = new("--poured") { Description = "Ink poured since the last reading, such as W=1000, ml.", AllowMultipleArgumentsPerToken = true };
        Option<double> hours = new("--print-hours") { Description = "Hours printed since the last reading." };
        Command command = new("read", "Writes tank levels down as somebody read them.") { press, levels, poured, hours };
        command.SetAction((parsed, cancellation) => WriteAsync(shared, parsed, parsed.GetRequiredValue(press), Amounts(parsed.GetRequiredValue(levels)).Then(l =>
            Amounts(parsed.GetValue(poured) ?? []).Then(p => Reading.Of(new PressReading(
                [.. l.Select(t => new TankState(t.Key, t.Value))], p.ToDictionary(StringComparer.Ordinal), parsed.GetValue(hours))))), cancellation));
        return command;
    }

    private static Command Done(Shared shared)
    {
        Argument<string> press = new("press") { Description = "Id of the press." };
        Argument<string[]> rules = new("rules") { Description = "Care tasks that were done, by the id of their rule.", Arity = ArgumentArity.OneOrMore };
        Command command = new("done", "Writes down that care tasks were done now.") { press, rules };
        command.SetAction((parsed, cancellation) => WriteAsync(
            shared, parsed, parsed.GetRequiredValue(press), Reading.Of(new PressReading(Done: parsed.GetRequiredValue(rules))), cancellation));
        return command;
    }

    private static Command Pour(Shared shared)
    {
        Argument<string> press = new("press") { Description = "Id of the press." };
        Argument<string> tank = new("tank") { Description = "Id of the tank." };
        Argument<string> lot = new("lot") { Description = "Number of the lot on the shelf." };
        Argument<double> ml = new("ml") { Description = "How much, ml." };
        Command command = new("pour", "Writes down ink poured from a lot of the shelf into a tank.") { press, tank, lot, ml };
        command.SetAction((parsed, cancellation) => WriteAsync(
            shared, parsed, parsed.GetRequiredValue(press),
            Reading.Of(new PressReading(FromShelf: [new(parsed.GetRequiredValue(tank), parsed.GetRequiredValue(lot), parsed.GetValue(ml))])), cancellation));
        return command;
    }

    private static Command Shelf(Shared shared)
    {
        Argument<string> press = new("press") { Description = "Id of the press." };
        Argument<string[]> packs = new("packs") { Description = "Ink on its shelf, such as cyan:LOT-7:2000:2027-03-31: ink, lot, ml, last day; more are said on the page /upkeep.", Arity = ArgumentArity.ZeroOrMore };
        Option<bool> empty = new("--empty") { Description = "Nothing is on the shelf." };
        Command command = new("shelf", "Shows the ink on the shelf of a press, or writes it down as it stands now.") { press, packs, empty };
        command.SetAction((parsed, cancellation) => parsed.GetValue(packs) is { Length: > 0 } || parsed.GetValue(empty)
            ? WriteAsync(shared, parsed, parsed.GetRequiredValue(press), Packs(parsed.GetValue(packs) ?? []).Then(p => Reading.Of(new PressReading(Packs: p))), cancellation)
            : shared.InShopAsync(parsed, (shop, answer) => ShowShelfAsync(shop, answer, parsed.GetRequiredValue(press), cancellation), cancellation));
        return command;
    }

    // Asking what is there must not take it off the list.
    private static async Task<int> ShowShelfAsync(ShopServices shop, Answer answer, string pressId, CancellationToken cancellation)
    {
        if (shop.Catalogue.Presses.All(p => p.Id != pressId))
            return answer.Fail(ExitCodes.Refused, "No such shelf.", [new("command line", null, "press", pressId, "one of " + string.Join(", ", shop.Catalogue.Presses.Select(p => p.Id)))]);
        IReadOnlyList<InkPack> packs = (await shop.Press.Book.ReadAsync(pressId, cancellation))?.Packs ?? [];
        if (answer.AsJson)
            answer.Json("ink-shelf", new { pressId, packs });
        else if (packs.Count == 0)
            answer.Line("Nothing is written down.");
        else
            answer.Table(["lot", "ink", "ml", "last day", "place"], packs.Select(p => (IReadOnlyList<string>)
                [p.Lot, Laydown.Plan.Runs.InkWords.Of(p.Role), Invariant($"{p.Ml:0.#}"), p.Expires is { } day ? Invariant($"{day:yyyy-MM-dd}") : "–", p.Place ?? "–"]), named: true);
        return ExitCodes.Done;
    }

    private static Task<int> WriteAsync(Shared shared, ParseResult parsed, string pressId, Reading<PressReading> reading, CancellationToken cancellation) => shared.InShopAsync(
        parsed,
        async (shop, answer) =>
        {
            Reading<PressCarePage> page = reading.IsTaken ? await shop.Press.Read.WriteAsync(pressId, reading.Value, cancellation) : Reading.Refused<PressCarePage>(reading.Faults);
            if (!page.IsTaken)
                return answer.Fail(ExitCodes.Refused, "Nothing was written down.", page.Faults);
            if (answer.AsJson)
                answer.Json("press-care", page.Value);
            else
                answer.Line(Invariant($"{pressId}, {page.Value.State.At:yyyy-MM-dd HH:mm}: {string.Join(", ", page.Value.State.Tanks.Select(t => Invariant($"{t.TankId} {t.LevelMl:0}")))} ml; {page.Value.Packs.Count} lots on the shelf."));
            return ExitCodes.Done;
        },
        cancellation);

    private static Reading<IReadOnlyDictionary<string, double>> Amounts(IReadOnlyList<string> words)
    {
        Dictionary<string, double> amounts = new(StringComparer.Ordinal);
        foreach (string word in words)
        {
            string[] parts = word.Split('=');
            if (parts.Length != 2 || !double.TryParse(parts[1], NumberStyles.Float, CultureInfo.InvariantCulture, out double ml) || !amounts.TryAdd(parts[0], ml))
                return Reading.Refused<IReadOnlyDictionary<string, double>>(new InputFault("command line", null, "levels", word, "a tank and its ml, each tank once, such as C=1210"));
        }

        return Reading.Of<IReadOnlyDictionary<string, double>>(amounts);
    }

    private static Reading<IReadOnlyList<InkPack>> Packs(IReadOnlyList<string> words)
    {
        List<InkPack> packs = [];
        foreach (string word in words)
        {
            string[] parts = word.Split(':');
            if (parts.Length is < 3 or > 4 || !Enum.TryParse(parts[0].Replace("-", "", StringComparison.Ordinal), ignoreCase: true, out InkRole role) || !Enum.IsDefined(role)
                || !double.TryParse(parts[2], NumberStyles.Float, CultureInfo.InvariantCulture, out double ml) || Expires(parts) is not { } expires)
            {
                return Reading.Refused<IReadOnlyList<InkPack>>(new InputFault("command line", null, "packs", word, "ink, lot, ml and last day, such as cyan:LOT-7:2000:2027-03-31"));
            }

            packs.Add(new(parts[1], role, ml, expires.Day));
        }

        return Reading.Of<IReadOnlyList<InkPack>>(packs);
    }

    private static (bool Has, DateOnly? Day)? Expires(string[] parts)
    {
        if (parts.Length == 3)
            return (false, null);
        return DateOnly.TryParseExact(parts[3], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? (true, day) : null;
    }
}
