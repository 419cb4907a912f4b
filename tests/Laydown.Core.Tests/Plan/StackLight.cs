using Laydown.Colour.Inks;
using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Optics.Looks;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Core.Tests.Plan;

/// <summary>What optics says of a stack: the look of solid layers, and how far it changes when one is left out.</summary>
/// <remarks>
/// A white that hides (S·X 20), block-out that lets nothing through (density 4), colours of a third of a solid pass, so that what lies behind them is
/// not lost in their dark, and a dim room (0.2) behind. By day the eye is adapted to the room; lit to the lamp through sheet and white, as <see cref="StackLook"/> does.
/// </remarks>
internal sealed class StackLight
{
    private static readonly LookInk White = LookInk.White(20.0), Black = LookInk.Colour(Bands.Flat(4));
    private static readonly LookInk[] Colours =
        [.. new[] { ProcessInk.Cyan, ProcessInk.Magenta, ProcessInk.Yellow }.Select(i => LookInk.Colour(GenericUvInks.Density(i), 0.35))];

    private static readonly SpectralWeights Room = SpectralWeights.For(Illuminant.D50), Lamp = SpectralWeights.For(Illuminant.LedB4);

    private readonly StackOptics optics;
    private readonly double[] solid, bare;

    public StackLight(IReadOnlyList<Layer> layers, LookSheet sheet, Viewer viewer)
    {
        int colours = 0;
        LookLayer[] looks = [.. layers.Select(l => new LookLayer(
            l.Face == SheetFace.First ? LookFace.First : LookFace.Second,
            [l.Group switch { InkGroup.White => White, InkGroup.BlockOut => Black, InkGroup.Clear => LookInk.Clear, _ => Colours[colours++ % 3] }]))];
        optics = new(sheet, looks, 0.2, viewer == Viewer.Front ? LookFace.First : LookFace.Second);
        solid = [.. layers.Select(_ => 1.0)];
        bare = [.. layers.Select(l => l.Group == InkGroup.White ? 1.0 : 0.0)];
    }

    public static LookSheet Sheet(Stock stock) => stock.Light switch
    {
        SheetLight.Opaque => LookSheet.Opaque(stock.ReflectancePercent / 100),
        SheetLight.Clear => LookSheet.Clear(stock.TransmittancePercent / 100),
        _ => LookSheet.Opal(stock.ReflectancePercent / 100, stock.TransmittancePercent / 100),
    };

    /// <summary>ΔE00 by day and lit between the stack as it is and without a layer.</summary>
    public (double Day, double Lit) ChangeWithout(int layer)
    {
        double[] without = [.. solid];
        without[layer] = 0;
        (Xyz day, Xyz lit) = See(solid);
        (Xyz dayWithout, Xyz litWithout) = See(without);
        Xyz adapted = See(bare).Lit;
        Xyz white = adapted.Y > 1e-4 ? adapted : Lamp.White;
        return (Ciede2000.Between(Lab.From(day, Room.White), Lab.From(dayWithout, Room.White)),
            Ciede2000.Between(Lab.From(lit, white), Lab.From(litWithout, white)));
    }

    private (Xyz Day, Xyz Lit) See(double[] coverages)
    {
        double[] reflectance = new double[Bands.Count], transmittance = new double[Bands.Count];
        optics.Solve(coverages, reflectance, transmittance);
        return (Room.Of(reflectance), Lamp.Of(transmittance));
    }
}
