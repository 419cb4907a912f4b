using Laydown.Measures;
using Laydown.Press.Inks;

namespace Laydown.Demo.Descriptions;

/// <summary>The demo's two ink sets. Every number is invented.</summary>
internal static class DemoInks
{
    /// <summary>Eight inks for the long belt.</summary>
    public static InkSet Eight() => new("eight-inks", "Eight inks, LED (invented)", true,
    [
        new(InkRole.Cyan, "Cyan", 1.08, Money.FromUnits(96.00), 1.02, 1, 190),
        new(InkRole.Magenta, "Magenta", 1.08, Money.FromUnits(96.00), 0.98, 1, 190),
        new(InkRole.Yellow, "Yellow", 1.07, Money.FromUnits(96.00), 0.94, 1, 180),
        new(InkRole.Black, "Black", 1.09, Money.FromUnits(96.00), 1.34, 1, 240),
        new(InkRole.LightCyan, "Light Cyan", 1.07, Money.FromUnits(98.00), 0.33, 0.32, 170),
        new(InkRole.LightMagenta, "Light Magenta", 1.07, Money.FromUnits(98.00), 0.31, 0.32, 170),
        new(InkRole.White, "White", 1.32, Money.FromUnits(118.00), 0.86, 1, 260),
        new(InkRole.Clear, "Clear", 1.05, Money.FromUnits(104.00), 0.01, 1, 150),
    ]);

    /// <summary>Five inks for the short belt.</summary>
    public static InkSet Five() => new("five-inks", "Five inks, LED (invented)", true,
    [
        new(InkRole.Cyan, "Cyan", 1.1, Money.FromUnits(88.00), 1.0, 1, 220),
        new(InkRole.Magenta, "Magenta", 1.1, Money.FromUnits(88.00), 0.95, 1, 220),
        new(InkRole.Yellow, "Yellow", 1.09, Money.FromUnits(88.00), 0.9, 1, 210),
        new(InkRole.Black, "Black", 1.11, Money.FromUnits(88.00), 1.28, 1, 280),
        new(InkRole.White, "White", 1.35, Money.FromUnits(109.00), 0.66, 1, 300),
    ]);
}
