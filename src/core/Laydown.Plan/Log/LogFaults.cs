using Laydown.Measures;

namespace Laydown.Plan.Log;

/// <summary>Why an entry cannot be taken into the log.</summary>
public static class LogFaults
{
    /// <summary>How far an entry may lie ahead of the clock of the machine that takes it, minutes.</summary>
    public const int MostAheadMinutes = 5;

    /// <summary>Most sheets of one stop and most pieces of one remake: more is a number of something else, such as a code that was scanned into the field.</summary>
    public const int MostCount = 1_000_000;

    private const int MostWords = 2000;
    private const long MostCents = 10_000_000_000;
    private const string File = "log";

    /// <summary>Every fault of an entry; none where it can be taken.</summary>
    /// <param name="entry">The entry.</param>
    /// <param name="run">Its run; null where the shop has none of that id.</param>
    /// <param name="tanks">Capacity of the tanks of its press, ml, by id.</param>
    /// <param name="before">What the log holds.</param>
    /// <param name="now">The instant it is taken at.</param>
    public static IReadOnlyList<InputFault> Of(
        LogEntry entry, LoggedRun? run, IReadOnlyDictionary<string, double> tanks, LogBefore before, DateTimeOffset now)
    {
        if (run is null && entry.Kind is not (LogKind.Ink or LogKind.Strike or LogKind.Note or LogKind.Overhead))
            return [Fault("/runId", entry.RunId is null ? "no run" : Invariant($"no run '{entry.RunId}'"), "the id of a run of this shop")];
        if (run is null && entry.RunId is not null)
            return [Fault("/runId", Invariant($"no run '{entry.RunId}'"), "the id of a run of this shop, or none")];
        return [.. Common(entry, now), .. OfOtherKinds(entry), .. entry.Kind switch
        {
            LogKind.Start => OfStart(entry, before),
            LogKind.Stop => OfStop(entry, before),
            LogKind.Ink => OfInk(entry, tanks),
            LogKind.Thickness => OfThickness(entry, run),
            LogKind.Colour => OfColour(entry.Colour),
            LogKind.Register => OfRegister(entry.Register),
            LogKind.Remake => OfRemake(entry.Remake, run),
            LogKind.Strike => OfStrike(entry, before),
            LogKind.Overhead => OfOverhead(entry),
            _ => string.IsNullOrWhiteSpace(entry.Note) ? [Fault("/note", "no words", "what is to be noted")] : [],
        }];
    }

    private static IEnumerable<InputFault> Common(LogEntry entry, DateTimeOffset now)
    {
        if (entry.At > now.AddMinutes(MostAheadMinutes))
            yield return Fault("/at", Invariant($"{entry.At:yyyy-MM-dd HH:mm}"), Invariant($"not after now, {now:yyyy-MM-dd HH:mm}"));
        if (entry.At.Year < 2000)
            yield return Fault("/at", Invariant($"{entry.At:yyyy-MM-dd HH:mm}"), "a time since 2000");
        if (entry.By.Length > 200)
            yield return Fault("/by", Invariant($"{entry.By.Length} signs"), "at most 200");
        if (entry.Note?.Length > MostWords)
            yield return Fault("/note", Invariant($"{entry.Note.Length} signs"), Invariant($"at most {MostWords}"));
    }

    // What another kind of entry tells would be kept without being looked at.
    private static IEnumerable<InputFault> OfOtherKinds(LogEntry entry) =>
        new (string Field, LogKind Kind, bool Told)[]
        {
            ("/stop", LogKind.Stop, entry.Stop is not null), ("/ink", LogKind.Ink, entry.Ink is not null), ("/thickness", LogKind.Thickness, entry.Thickness is not null),
            ("/colour", LogKind.Colour, entry.Colour is not null), ("/register", LogKind.Register, entry.Register is not null), ("/remake", LogKind.Remake, entry.Remake is not null),
            ("/strikes", LogKind.Strike, entry.Strikes is not null), ("/overhead", LogKind.Overhead, entry.Overhead is not null),
        }.Where(t => t.Told && t.Kind != entry.Kind).Select(t => Fault(t.Field, Invariant($"told by an entry of kind {entry.Kind}"), Invariant($"nothing there, or an entry of kind {t.Kind}")));

    private static IEnumerable<InputFault> OfStart(LogEntry entry, LogBefore before)
    {
        if (before.LastOfRun is { Kind: LogKind.Start } running)
            yield return Fault("/kind", Invariant($"run {entry.RunId} is running since {running.At:yyyy-MM-dd HH:mm}"), "a run that stands");
        else if (before.LastOfRun is { Stop.Done: true } done)
            yield return Fault("/kind", Invariant($"run {entry.RunId} was done {done.At:yyyy-MM-dd HH:mm}"), "a run that is not done; strike the entry that ended it if that was wrong");
        else if (before.LastOfRun is { } last && entry.At < last.At)
            yield return Fault("/at", Invariant($"start {entry.At:yyyy-MM-dd HH:mm} before the last stop {last.At:yyyy-MM-dd HH:mm}"), "a start after the stop before it");
        else if (before.OthersOnPress.FirstOrDefault(t => t.Stop is null) is { } other)
            yield return Fault("/runId", Invariant($"run {other.RunId} is running on {entry.PressId}"), Invariant($"run {other.RunId} stopped first"));
        else if (before.OthersOnPress.FirstOrDefault(t => t.Start <= entry.At && entry.At < t.Stop) is { } within)
            yield return Fault("/at", Invariant($"start {entry.At:yyyy-MM-dd HH:mm} while {Told(within)}"), Invariant($"a start from {within.Stop:HH:mm} on; {IfWrong(within)}"));
    }

    // One press prints one run at a time: else its minutes would be counted twice.
    private static IEnumerable<InputFault> OverOthers(LogEntry stop, LogEntry start, LogBefore before)
    {
        if (before.OthersOnPress.FirstOrDefault(t => t.Start < stop.At && t.Stop > start.At) is not { } over)
            yield break;
        string mend = over.Start > start.At
            ? Invariant($"an end by {over.Start:yyyy-MM-dd HH:mm}") : Invariant($"entry {start.Number}, which started this run, struck and told again with its own time");
        yield return Fault("/at", Invariant($"{start.At:yyyy-MM-dd HH:mm} to {stop.At:HH:mm} while {Told(over)}"), Invariant($"{mend}; {IfWrong(over)}"));
    }

    private static string Told(RunTurn turn) => Invariant($"run {turn.RunId} was on {turn.PressId} from {turn.Start:yyyy-MM-dd HH:mm} to {turn.Stop:HH:mm} (entries {turn.StartNumber} and {turn.StopNumber})");

    private static string IfWrong(RunTurn turn) => Invariant($"where the times of {turn.RunId} are wrong, entry {turn.StopNumber} struck, then {turn.StartNumber}, and both told again");

    private static IEnumerable<InputFault> OfStop(LogEntry entry, LogBefore before)
    {
        if (entry.Stop is not { } stop)
        {
            yield return Fault("/stop", "nothing", "good and spoiled sheets");
            yield break;
        }

        if (stop.Good is < 0 or > MostCount)
            yield return Fault("/stop/good", Invariant($"{stop.Good} sheets"), Invariant($"0 or more, at most {MostCount}"));
        if (stop.Spoiled is < 0 or > MostCount)
            yield return Fault("/stop/spoiled", Invariant($"{stop.Spoiled} sheets"), Invariant($"0 or more, at most {MostCount}"));
        if (stop.Made is { } made && made != (long)stop.Good + stop.Spoiled)
            yield return Fault("/stop/made", Invariant($"{made} sheets made, {stop.Good} good + {stop.Spoiled} spoiled"), "as many good and spoiled as made");
        if (stop.InkMl is { } ink && !(ink is >= 0 and <= 1e6))
            yield return Fault("/stop/inkMl", Invariant($"{ink} ml"), "0 ml to 1 000 000 ml");
        if (before.LastOfRun is not { Kind: LogKind.Start } start)
            yield return Fault("/kind", Invariant($"run {entry.RunId} is not running"), "a run that was started");
        else if (entry.At <= start.At)
            yield return Fault("/at", Invariant($"end {entry.At:yyyy-MM-dd HH:mm:ss} not after the start {start.At:yyyy-MM-dd HH:mm:ss}"), "an end after the start");
        else
            foreach (InputFault over in OverOthers(entry, start, before))
                yield return over;
        if (stop.Done && stop.Good >= 0 && stop.Spoiled >= 0 && before.OfRun.Sum(e => (e.Stop?.Good ?? 0L) + (e.Stop?.Spoiled ?? 0L)) + (long)stop.Good + stop.Spoiled == 0)
            yield return Fault("/stop", "done without a sheet, good or spoiled", "at least one sheet, or a run that is broken off");
    }

    private static IEnumerable<InputFault> OfInk(LogEntry entry, IReadOnlyDictionary<string, double> tanks)
    {
        if (entry.Ink is not { } ink)
            yield return Fault("/ink", "nothing", "a tank and its level");
        else if (ink.TankId is null || !tanks.TryGetValue(ink.TankId, out double capacity))
            yield return Fault("/ink/tankId", Invariant($"'{ink.TankId}'"), Invariant($"a tank of {entry.PressId}: {string.Join(", ", tanks.Keys)}"));
        else if (!(ink.LevelMl >= 0 && ink.LevelMl <= capacity))
            yield return Fault("/ink/levelMl", Invariant($"{ink.LevelMl} ml"), Invariant($"0 ml to {capacity:0.#} ml, what tank {ink.TankId} holds"));
    }

    private static IEnumerable<InputFault> OfThickness(LogEntry entry, LoggedRun? run)
    {
        IReadOnlyList<double> points = entry.Thickness?.PointsMm ?? [];
        if (points.Count != SheetThickness.Points)
            yield return Fault("/thickness/pointsMm", Invariant($"{points.Count} points"), Invariant($"{SheetThickness.Points} points: four corners and the middle"));
        double most = run?.ThickestMm ?? 30;
        for (int i = 0; i < points.Count; i++)
            if (!(points[i] > 0 && points[i] <= most))
                yield return Fault(Invariant($"/thickness/pointsMm/{i}"), Invariant($"{points[i]} mm"), Invariant($"over 0 mm to {most} mm, what the press takes"));
    }

    private static IEnumerable<InputFault> OfColour(ColourReading? colour)
    {
        if (colour is null)
        {
            yield return Fault("/colour", "nothing", "a patch and its difference");
            yield break;
        }

        if (string.IsNullOrWhiteSpace(colour.Patch) || colour.Patch.Length > 200)
            yield return Fault("/colour/patch", Invariant($"{colour.Patch?.Length ?? 0} signs"), "the name of the patch, 1 to 200 signs");
        if (!(colour.DeltaE is >= 0 and <= 200))
            yield return Fault("/colour/deltaE", Invariant($"{colour.DeltaE}"), "0 to 200");
        foreach ((string name, double? value) in new[] { ("deltaL", colour.DeltaL), ("deltaA", colour.DeltaA), ("deltaB", colour.DeltaB) })
            if (value is { } told && !(Math.Abs(told) <= 200))
                yield return Fault(Invariant($"/colour/{name}"), Invariant($"{told}"), "−200 to 200");
    }

    private static IEnumerable<InputFault> OfRegister(RegisterReading? register)
    {
        if (register is null)
            yield return Fault("/register", "nothing", "two distances in mm");
        else if (!(Math.Abs(register.AcrossMm) <= 100))
            yield return Fault("/register/acrossMm", Invariant($"{register.AcrossMm} mm"), "−100 mm to 100 mm");
        else if (!(Math.Abs(register.AlongMm) <= 100))
            yield return Fault("/register/alongMm", Invariant($"{register.AlongMm} mm"), "−100 mm to 100 mm");
    }

    private static IEnumerable<InputFault> OfRemake(RemakeNote? remake, LoggedRun? run)
    {
        if (remake is null)
        {
            yield return Fault("/remake", "nothing", "cause, where found, pieces");
            yield break;
        }

        if (!Enum.IsDefined(remake.Cause))
            yield return Fault("/remake/cause", Invariant($"{remake.Cause}"), "a cause of the list");
        if (!Enum.IsDefined(remake.Found))
            yield return Fault("/remake/found", Invariant($"{remake.Found}"), "a place of the list");
        if (!Enum.IsDefined(remake.Payer))
            yield return Fault("/remake/payer", Invariant($"{remake.Payer}"), "shop, customer or supplier");
        if (remake.ItemId is { } item && run?.ItemIds is { } items && !items.Contains(item, StringComparer.Ordinal))
            yield return Fault("/remake/itemId", Invariant($"'{item}'"), Invariant($"an item of run {run.RunId}: {string.Join(", ", items)}; or none for any on the sheet"));
        if (remake.Pieces is < 1 or > MostCount)
            yield return Fault("/remake/pieces", Invariant($"{remake.Pieces}"), Invariant($"1 or more, at most {MostCount}"));
        foreach ((string name, double value, string unit) in new[] { ("areaM2", remake.AreaM2, "m²"), ("inkMl", remake.InkMl, "ml"), ("minutes", remake.Minutes, "min") })
            if (!(value is >= 0 and <= 1e6))
                yield return Fault(Invariant($"/remake/{name}"), Invariant($"{value} {unit}"), Invariant($"0 {unit} to 1 000 000 {unit}"));
        if (remake.Cost.Cents is < 0 or > MostCents)
            yield return Fault("/remake/cost", Invariant($"{remake.Cost}"), Invariant($"0 or more, at most {new Money(MostCents)}"));
    }

    private static IEnumerable<InputFault> OfStrike(LogEntry entry, LogBefore before)
    {
        if (before.Struck is not { } struck)
            yield return Fault("/strikes", entry.Strikes is { } number ? Invariant($"no entry {number} that counts") : "no number", "the number of an entry that counts");
        else if (struck.Kind == LogKind.Strike)
            yield return Fault("/strikes", Invariant($"entry {struck.Number} strikes another"), "an entry that tells what happened; tell it again instead");
        else if (struck.Kind is LogKind.Start or LogKind.Stop && before.LastOfRun?.Number != struck.Number)
            yield return Fault("/strikes", Invariant($"entry {struck.Number} is not the last start or stop of run {struck.RunId}"), "the last one first");
        if (string.IsNullOrWhiteSpace(entry.Note))
            yield return Fault("/note", "no words", "why the entry counts no more");
    }

    private static IEnumerable<InputFault> OfOverhead(LogEntry entry)
    {
        if (entry.RunId is not null)
            yield return Fault("/runId", entry.RunId, "no run: overhead is the shop's");
        if (entry.Overhead is not { } spent)
        {
            yield return Fault("/overhead", "nothing", "kind, amount, for what");
            yield break;
        }

        if (spent.Amount.Cents is <= 0 or > MostCents)
            yield return Fault("/overhead/amount", Invariant($"{spent.Amount}"), Invariant($"over 0, at most {new Money(MostCents)}; an entry that was wrong is struck"));
        if (string.IsNullOrWhiteSpace(spent.What) || spent.What.Length > 200)
            yield return Fault("/overhead/what", Invariant($"{spent.What?.Length ?? 0} signs"), "for what it was spent, 1 to 200 signs");
    }

    private static InputFault Fault(string field, string found, string wanted) => new(File, null, field, found, wanted);
}
