using Laydown.Colour.Inks;
using Laydown.Colour.Spectra;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>Inks and nozzles of a press as the forecast of bands needs them.</summary>
/// <remarks>
/// Colours are those of the generic class of inks over a white that gives light back through them: T² by thirds of the spectrum. A white,
/// which lies under or over
/// colour on sheets that are not white, is taken to change what is seen by half of its light; clear ink changes nothing. Bands ask for no
/// more: what counts is how dark an ink is.
/// </remarks>
internal static class BandInks
{
    private const double WhiteShare = 0.6;

    /// <summary>An ink of a layer with the flaws of its channels.</summary>
    public static BandInk Of(PressDescription press, InkRole role, int layer)
    {
        (double red, double green, double blue) = role switch
        {
            InkRole.White => (WhiteShare, WhiteShare, WhiteShare),
            InkRole.Clear => (1, 1, 1),
            _ => (Third(role, 600, 700), Third(role, 500, 590), Third(role, 400, 490)),
        };
        return new(InkRoleNames.Of(role), layer, red, green, blue, FlawsOf(press, role));
    }

    // Two channels of one role print every other plane; a flaw of either counts.
    private static NozzleFlaws FlawsOf(PressDescription press, InkRole role)
    {
        List<NozzleState> states = [.. (press.NozzleStates ?? []).Where(s => press.Channels.Any(
            c => c.Role == role && string.Equals(c.Id, s.ChannelId, StringComparison.Ordinal)))];
        return states.All(s => s.Missing.Count == 0 && s.Slanted.Count == 0)
            ? NozzleFlaws.None
            : new(states.SelectMany(s => s.Missing).ToHashSet(),
                states.SelectMany(s => s.Slanted).GroupBy(s => s.Nozzle).ToDictionary(g => g.Key, g => g.First().OffsetUm));
    }

    private static double Third(InkRole role, int fromNm, int toNm)
    {
        double[] density = GenericUvInks.Density(Enum.Parse<ProcessInk>(role.ToString()));
        return Enumerable.Range(0, Bands.Count).Where(b => Bands.Nm(b) >= fromNm && Bands.Nm(b) <= toNm).Average(b => Math.Pow(10, -2 * density[b]));
    }
}
