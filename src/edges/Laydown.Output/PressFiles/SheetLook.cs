using Laydown.Optics.Looks;
using Laydown.Shop.Layers;
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

    /// <summary>The look by day, from the second surface.</summary>
    public static StackLook Back(RunContext context, RunPlanes planes) => Of(context, planes, Scene.Day(context.Condition.RoomLux, Wall), LookFace.Second);

    private static StackLook Of(RunContext context, RunPlanes planes, Scene scene, LookFace viewedFrom = LookFace.First) => new(
        StackLights.SheetOf(context.Stock).Value,
        [.. context.Run.Stack.Layers.Select((layer, i) => new LookLayer(
            StackLights.FaceOf(layer.Face),
            [.. planes.InksOf(i).Select(plane => StackLights.InkOf(plane.Role, context.InkSet, context.Optics))]))],
        scene,
        viewedFrom);
}
