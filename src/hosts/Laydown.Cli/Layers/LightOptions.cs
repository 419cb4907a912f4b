using System.CommandLine;
using Laydown.Optics.Looks;
using Laydown.Shop.Layers;

namespace Laydown.Cli.Layers;

/// <summary>The light a piece is seen in, as options.</summary>
internal sealed class LightOptions
{
    public Option<double?> Room { get; } = new("--room") { Description = "Room light by day, lux." };

    public Option<string?> RoomLight { get; } = new("--room-light") { Description = "Its spectrum: D50, D65, A, LED-B3, LED-B4, LED-B5." };

    public Option<double?> NightRoom { get; } = new("--night-room") { Description = "Room light with the lamp on, lux." };

    public Option<double?> Lamp { get; } = new("--lamp") { Description = "Luminance of the lit diffuser behind the piece, cd/m2." };

    public Option<string?> LampLight { get; } = new("--lamp-light") { Description = "Spectrum of the lamp, as for the room." };

    public Option<double?> Backing { get; } = new("--backing") { Description = "Reflectance of what stands behind the piece, 0 to 0.99." };

    public void AddTo(Command command)
    {
        foreach (Option option in new Option[] { Room, RoomLight, NightRoom, Lamp, LampLight, Backing })
            command.Options.Add(option);
    }

    /// <summary>Both lights, or what is wrong in words; null for a light of which nothing was said.</summary>
    public (LookScene? Day, LookScene? Night, string? Fault) Scenes(ParseResult parsed)
    {
        string? light = parsed.GetValue(RoomLight), lamp = parsed.GetValue(LampLight);
        foreach ((string name, string? value) in new[] { ("--room-light", light), ("--lamp-light", lamp) })
        {
            if (value is not null && LookScene.Find(value) is null)
                return (null, null, Invariant($"{name}: found '{value}'; wanted one of {string.Join(", ", LookScene.Lights)}."));
        }

        foreach ((string name, double? value, double most) in new[]
        {
            ("--room", parsed.GetValue(Room), 200_000), ("--night-room", parsed.GetValue(NightRoom), 200_000),
            ("--lamp", parsed.GetValue(Lamp), 1_000_000), ("--backing", parsed.GetValue(Backing), 0.99),
        })
        {
            double least = name is "--room" or "--lamp" ? 0.001 : 0;
            if (value is { } number && !(number >= least && number <= most))
                return (null, null, Invariant($"{name}: found {number}; wanted {least} to {most}."));
        }

        bool said = new object?[] { light, lamp, parsed.GetValue(Room), parsed.GetValue(NightRoom), parsed.GetValue(Lamp), parsed.GetValue(Backing) }.Any(v => v is not null);
        if (!said)
            return (null, null, null);
        LookScene day = LookScene.Of(Scene.Day()), night = LookScene.Of(Scene.Lit());
        double backing = parsed.GetValue(Backing) ?? day.Backing;
        return (
            day with { RoomLux = parsed.GetValue(Room) ?? day.RoomLux, Room = light ?? day.Room, Lamp = lamp ?? day.Lamp, Backing = backing },
            night with
            {
                RoomLux = parsed.GetValue(NightRoom) ?? night.RoomLux,
                Room = light ?? night.Room,
                LampCdPerM2 = parsed.GetValue(Lamp) ?? night.LampCdPerM2,
                Lamp = lamp ?? night.Lamp,
                Backing = backing,
            },
            null);
    }
}
