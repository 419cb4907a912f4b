using Laydown.Press.Inks;
using Laydown.Press.Stacks;

namespace Laydown.Web.Design;

/// <summary>How values are written on screens: one way for each kind, in plain words, never after the machine's language.</summary>
public static class Say
{
    /// <summary>Three significant digits, or all whole digits, such as <c>0.125</c>, <c>12.4</c>, <c>1380</c>.</summary>
    public static string Number(double value) => Math.Abs(value) switch
    {
        0 => "0",
        < 0.01 => value.ToString("0.0000", System.Globalization.CultureInfo.InvariantCulture),
        < 1 => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture),
        < 10 => value.ToString("0.0#", System.Globalization.CultureInfo.InvariantCulture),
        < 100 => value.ToString("0.0", System.Globalization.CultureInfo.InvariantCulture),
        < 10_000 => value.ToString("0", System.Globalization.CultureInfo.InvariantCulture),
        _ => value.ToString("# ### ##0", System.Globalization.CultureInfo.InvariantCulture).Trim(),
    };

    /// <summary>A number as attributes want it, with a point and at most three decimals.</summary>
    public static string Plain(double value) => value.ToString("0.###", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A day such as <c>Thu 26 Nov</c>.</summary>
    public static string Day(DateOnly day) => day.ToString("ddd d MMM", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A day in full, such as <c>Thursday 26 November 2026</c>.</summary>
    public static string LongDay(DateOnly day) => day.ToString("dddd d MMMM yyyy", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>A day for machines, such as <c>2026-11-26</c>.</summary>
    public static string IsoDay(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);

    /// <summary>How far away a day is, seen from <paramref name="today"/>: <c>today</c>, <c>in 3 days</c>, <c>2 days late</c>.</summary>
    public static string Away(DateOnly day, DateOnly today) => (day.DayNumber - today.DayNumber) switch
    {
        0 => "today",
        1 => "tomorrow",
        -1 => "1 day late",
        < -1 and var late => Invariant($"{-late} days late"),
        var days => Invariant($"in {days} days"),
    };

    /// <summary>Minutes as <c>48 min</c> or <c>2 h 05 min</c>.</summary>
    public static string Minutes(double minutes)
    {
        long whole = (long)Math.Round(minutes, MidpointRounding.AwayFromZero);
        return whole < 60 ? Invariant($"{Number(minutes)} min") : Invariant($"{whole / 60} h {whole % 60:00} min");
    }

    /// <summary>A file's length as <c>812 bytes</c>, <c>14.2 kB</c>, <c>3.1 MB</c> (powers of ten).</summary>
    public static string Bytes(long bytes) => bytes switch
    {
        < 1_000 => Invariant($"{bytes} bytes"),
        < 1_000_000 => Invariant($"{bytes / 1e3:0.0} kB"),
        < 1_000_000_000 => Invariant($"{bytes / 1e6:0.0} MB"),
        _ => Invariant($"{bytes / 1e9:0.00} GB"),
    };

    /// <summary>An ink's name.</summary>
    public static string Ink(InkRole role) => role switch
    {
        InkRole.LightCyan => "Light cyan",
        InkRole.LightMagenta => "Light magenta",
        _ => role.ToString(),
    };

    /// <summary>What a layer is made of, in words.</summary>
    public static string Group(InkGroup group) => group == InkGroup.BlockOut ? "Block-out" : group.ToString();

    /// <summary>A layer in words, such as <c>White, flood, 100 %</c>.</summary>
    public static string Layer(Layer layer)
    {
        string group = Group(layer.Group);
        string source = layer.Source switch
        {
            null => "",
            WhiteSource.Flood => ", flood",
            WhiteSource.UnderImage => ", where the picture has ink",
            WhiteSource.Inverse => ", the lighter the picture the more",
            WhiteSource.Alpha => ", from the file's alpha",
            WhiteSource.NamedSeparation => Invariant($", from the separation {layer.SeparationName}"),
            WhiteSource.MaskPicture => ", from a mask picture",
            _ => Invariant($", {layer.Source}"),
        };
        string choke = layer.ChokeMm switch
        {
            0 => "",
            > 0 => Invariant($", choked {layer.ChokeMm:0.##} mm"),
            _ => Invariant($", spread {-layer.ChokeMm:0.##} mm"),
        };
        string shaped = string.Concat(layer.Shaping.Words().Select(w => ", " + w));
        return Invariant($"{group}{source}{(layer.Negative ? ", negative" : "")}, {layer.StrengthPercent:0.#} %{choke}{shaped}{(layer.Mirrored ? ", mirrored" : "")}");
    }

    /// <summary>A face in words, for those who look at the piece.</summary>
    public static string Face(SheetFace face, SeenFrom seenFrom = SeenFrom.OneSide) => (face, seenFrom) switch
    {
        (SheetFace.First, SeenFrom.OneSide) => "First surface, toward the viewer",
        (SheetFace.First, _) => "First surface, toward the viewer in front",
        (_, SeenFrom.OneSide) => "Second surface, seen through the sheet",
        _ => "Second surface, toward the viewer on the back",
    };

    /// <summary>One or more, such as <c>1 piece</c>, <c>12 pieces</c>.</summary>
    public static string Count(int count, string one, string more) => Invariant($"{count} {(count == 1 ? one : more)}");
}
