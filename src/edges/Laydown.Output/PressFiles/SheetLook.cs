using Laydown.Colour.Inks;
using Laydown.Optics.Looks;
using Laydown.Press.Inks;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Run;

namespace Laydown.Output.PressFiles;

/// <summary>Brings stock, stack and inks of a run to the model of light that draws previews.</summary>
internal static class SheetLook
{
    /// <summary>Reflectance of a white wall behind a piece without a lamp; common practice, no source.</summary>
    private const double Wall = 0.85;

    /// <summary>The look by day, from the first surface.</summary>
    public static StackLook Day(RunContext context, RunPlanes planes) =>
        Of(context, planes, context.Run.Stack.Lit ? Scene.Day(context.Condition.RoomLux) : Scene.Day(context.Condition.RoomLux, Wall));

    /// <summary>The look with the lamp on, from the first surface.</summary>
    public static StackLook Lit(RunContext context, RunPlanes planes) => Of(context, planes, Scene.Lit());

    private static StackLook Of(RunContext context, RunPlanes planes, Scene scene) => new(
        SheetOf(context.Stock),
        [.. context.Run.Stack.Layers.Select((layer, i) => new LookLayer(
            layer.Face == SheetFace.First ? LookFace.First : LookFace.Second,
            [.. planes.InksOf(i).Select(plane => InkOf(plane.Role, context.InkSet))]))],
        scene);

    private static LookSheet SheetOf(Stock stock) => stock.Light switch
    {
        SheetLight.Opaque => LookSheet.Opaque(stock.ReflectancePercent / 100),
        SheetLight.Clear => LookSheet.Clear(Math.Clamp(stock.TransmittancePercent / 100, 0.01, 1)),
        _ => LookSheet.Opal(stock.ReflectancePercent / 100, Math.Min(stock.TransmittancePercent, 100 - stock.ReflectancePercent) / 100),
    };

    private static LookInk InkOf(InkRole role, InkSet inks) => role switch
    {
        InkRole.Cyan => Colour(ProcessInk.Cyan, InkRole.Cyan, inks),
        InkRole.Magenta => Colour(ProcessInk.Magenta, InkRole.Magenta, inks),
        InkRole.Yellow => Colour(ProcessInk.Yellow, InkRole.Yellow, inks),
        InkRole.Black => Colour(ProcessInk.Black, InkRole.Black, inks),
        InkRole.LightCyan => Light(ProcessInk.Cyan, InkRole.Cyan, role, inks),
        InkRole.LightMagenta => Light(ProcessInk.Magenta, InkRole.Magenta, role, inks),
        InkRole.White => White(inks),
        _ => LookInk.Clear,
    };

    private static LookInk Colour(ProcessInk process, InkRole role, InkSet inks) =>
        LookInk.Colour(DensityOf(process, role, inks));

    // A light ink is the dark one thinned: the same colourant, less of it.
    private static LookInk Light(ProcessInk process, InkRole dark, InkRole light, InkSet inks) =>
        LookInk.Colour(DensityOf(process, dark, inks), inks.Find(light)?.Strength ?? 1);

    private static double[] DensityOf(ProcessInk process, InkRole role, InkSet inks) =>
        inks.Find(role) is { } ink ? GenericUvInks.Density(process, ink.SolidDensity) : GenericUvInks.Density(process);

    // A white that absorbs nothing lets T = 1 / (1 + S·X) through, so its density in transmission gives S·X.
    private static LookInk White(InkSet inks) =>
        LookInk.White(Math.Clamp(Math.Pow(10, inks.Find(InkRole.White)?.SolidDensity ?? 0.9) - 1, 0.01, 100));
}
