using Laydown.Web.Forms;

namespace Laydown.Web.Log;

/// <summary>The forms of the log, with the fields of an entry that each of their fields fills.</summary>
public static class LogFields
{
    /// <summary>A run is started.</summary>
    public static readonly FormFields Start = new("start", new("at", "start-at", "When, if not now", "/at"), new("by", "start-by", "By", "/by"));

    /// <summary>A run is stopped.</summary>
    public static readonly FormFields Stop = new(
        "stop", new("good", "good", "Good sheets", "/stop/good"), new("spoiled", "spoiled", "Spoiled sheets", "/stop/spoiled"), new("made", "made", "Counted by the press", "/stop/made"),
        new("ink", "ink", "Ink counted, ml", "/stop/inkMl"), new("at", "stop-at", "When, if not now", "/at"), new("by", "stop-by", "By", "/by"), new("note", "stop-note", "Note", "/note"));

    /// <summary>Thickness of a sheet at five points.</summary>
    public static readonly FormFields Thickness = new(
        "thickness", [.. new[] { "Near left", "Near right", "Far left", "Far right", "Middle" }.Select((point, i) =>
            new FormField(Invariant($"p{i + 1}"), Invariant($"p{i + 1}"), point, Invariant($"/thickness/pointsMm/{i}")))]);

    /// <summary>Register.</summary>
    public static readonly FormFields Register = new(
        "register", new("across", "across", "Register across the feed, mm", "/register/acrossMm"), new("along", "along", "Register along the feed, mm", "/register/alongMm"));

    /// <summary>Difference of a colour.</summary>
    public static readonly FormFields Colour = new(
        "colour", new("patch", "patch", "Patch", "/colour/patch"), new("de", "de", "ΔE", "/colour/deltaE"), new("dl", "dl", "ΔL*", "/colour/deltaL"),
        new("da", "da", "Δa*", "/colour/deltaA"), new("db", "db", "Δb*", "/colour/deltaB"));

    /// <summary>Level of a tank.</summary>
    public static readonly FormFields Ink = new("ink", new("tank", "tank", "Tank", "/ink/tankId"), new("level", "level", "Level, ml", "/ink/levelMl"));

    /// <summary>Pieces that must be printed again.</summary>
    public static readonly FormFields Remake = new(
        "remake", new("cause", "cause", "Cause", "/remake/cause"), new("found", "found", "Found", "/remake/found"), new("item", "item", "Item", "/remake/itemId"),
        new("pieces", "pieces", "Pieces", "/remake/pieces"), new("minutes", "minutes", "Minutes lost", "/remake/minutes"), new("payer", "payer", "Who pays", "/remake/payer"),
        new("action", "action", "Done against it", "/remake/action"));

    /// <summary>An entry that was wrong.</summary>
    public static readonly FormFields Strike = new("strike", new("number", "number", "Entry that was wrong", "/strikes"), new("note", "strike-note", "Why", "/note"), new("by", "strike-by", "Who", "/by"));

    /// <summary>Words.</summary>
    public static readonly FormFields Note = new("note", new FormField("note", "note", "Note", "/note"));

    /// <summary>Overhead that was spent.</summary>
    public static readonly FormFields Spent = new(
        "spent", new("kind", "kind", "Overhead", "/overhead/name"), new("amount", "amount", "Amount without tax", "/overhead/amount"), new("what", "what", "For what", "/overhead/what"),
        new("day", "day", "Day", "/at"), new("by", "by", "Who", "/by"));

    /// <summary>A part of the log that is looked at.</summary>
    public static readonly FormFields Choose = new(
        "choose", new("kind", "kind", "What"), new("press", "press", "Press"), new("run", "run", "Run"), new("from", "from", "From day"), new("to", "to", "To day"), new("count", "count", "Runs that count"));

    /// <summary>The form of a run's page by its name; null where there is none.</summary>
    public static FormFields? OfRun(string form) => new[] { Start, Stop, Thickness, Register, Colour, Ink, Remake, Strike, Note }.FirstOrDefault(f => string.Equals(f.Form, form, StringComparison.Ordinal));
}
