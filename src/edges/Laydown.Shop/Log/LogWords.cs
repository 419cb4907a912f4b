using System.Globalization;
using Laydown.Plan.Log;
using Laydown.Plan.StockRoom;

namespace Laydown.Shop.Log;

/// <summary>Entries of the log in words.</summary>
public static class LogWords
{
    /// <summary>Time, run and what happened, in one line.</summary>
    public static string Line(LogEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return Invariant($"{entry.At:yyyy-MM-dd HH:mm}  {entry.RunId ?? (entry.PressId.Length > 0 ? entry.PressId : "shop")}  {What(entry)}{(entry.Note is null || entry.Kind == LogKind.Note ? "" : Invariant($"; {entry.Note}"))}{(entry.Struck ? " (struck)" : "")}");
    }

    /// <summary>What happened, without time and run.</summary>
    public static string What(LogEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        return entry switch
        {
            { Stop: { } stop } => Invariant($"{(stop.Done ? "done" : "broken off")}: {stop.Good} good, {stop.Spoiled} spoiled{Took(entry.Actual)}"),
            { Ink: { } ink } => Invariant($"tank {ink.TankId} at {ink.LevelMl:0.#} ml"),
            { Thickness: { } thickness } => Invariant($"thickness {string.Join(" ", thickness.PointsMm.Select(p => Invariant($"{p:0.00}")))} mm, highest {thickness.HighestMm:0.00}"),
            { Colour: { } colour } => Invariant($"{colour.Patch}: ΔE {colour.DeltaE:0.00}"),
            { Register: { } register } => Invariant($"register {register.AcrossMm:0.00} mm across, {register.AlongMm:0.00} mm along"),
            { Remake: { } remake } => Invariant($"remake of {remake.Pieces}, {Of(remake.Cause)}, found {Of(remake.Found)}, cost {remake.Cost}"),
            { Overhead: { } spent } => Invariant($"{spent.Name}: {spent.Amount} spent, {spent.What}"),
            { Strikes: { } number } => Invariant($"entry {number} counts no more"),
            { Kind: LogKind.Start } => "started",
            _ => entry.Note ?? "",
        };
    }

    /// <summary>Two runs at once, in a sentence.</summary>
    public static string Of(RunOverlap overlap)
    {
        ArgumentNullException.ThrowIfNull(overlap);
        return Invariant($"{overlap.From:yyyy-MM-dd HH:mm} to {(overlap.To.Date == overlap.From.Date ? overlap.To.ToString("HH:mm", CultureInfo.InvariantCulture) : overlap.To.ToString("yyyy-MM-dd HH:mm", CultureInfo.InvariantCulture))}, {overlap.Minutes:0} min: {overlap.RunId} and {overlap.OtherRunId} on {overlap.PressId}.");
    }

    /// <summary>What a run used of one stock, in a sentence.</summary>
    public static string Of(RunStockLine line)
    {
        ArgumentNullException.ThrowIfNull(line);
        string lack = line.NotTaken > 0 ? Invariant($"; {line.NotTaken:0.##} more than the room held: count its lots") : "";
        return Invariant($"{line.Name}: {line.Needed:0.##} {line.Unit} planned, {(line.Used is { } used ? Invariant($"{used:0.##} used, ") : "")}{line.Taken:0.##} taken from the stock room{lack}.");
    }

    /// <summary>A kind in words.</summary>
    public static string Of(LogKind kind) => kind switch
    {
        LogKind.Ink => "tank level",
        LogKind.Strike => "struck",
        _ => kind.ToString().ToLowerInvariant(),
    };

    /// <summary>Where a fault was found, in words.</summary>
    public static string Of(RemakeFound found) => found switch
    {
        RemakeFound.File => "in the file",
        RemakeFound.Proof => "in the proof",
        RemakeFound.Press => "at the press",
        RemakeFound.Finishing => "in finishing",
        _ => "by the customer",
    };

    /// <summary>A cause in words.</summary>
    public static string Of(RemakeCause cause) => cause switch
    {
        RemakeCause.HeadStrike => "head strike",
        RemakeCause.NozzleOut => "nozzle out",
        RemakeCause.SoftEdges => "soft edges",
        RemakeCause.White => "white wrong",
        RemakeCause.Scale => "wrong size",
        RemakeCause.Adhesion => "ink comes off",
        RemakeCause.ChippedEdge => "chipped edge",
        RemakeCause.PanelColour => "panels differ",
        RemakeCause.Code => "code does not scan",
        RemakeCause.InkOut => "ink ran out",
        RemakeCause.GrainWrong => "grain wrong way",
        RemakeCause.UpsideDown => "upside down",
        RemakeCause.File => "fault in the file",
        RemakeCause.Cut => "cut wrong",
        _ => cause.ToString().ToLowerInvariant(),
    };

    private static string Took(RunActual? actual) =>
        actual is null ? "" : Invariant($"; took {actual.Minutes:0.0} min, estimated {actual.EstimatedMinutes:0.0}");
}
