using Laydown.Colour.Spaces;
using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Panels;

/// <summary>How a pair would look on a panel, quickly: for dragging weight and white while looking.</summary>
/// <remarks>
/// Nodes of the table keep light instead of inks and stand twice as far apart; contrast is not kept in areas out of reach. Light is given
/// as <see cref="StackLight"/> gives it: seen = room·D + lamp·N in linear primaries of sRGB.
/// </remarks>
public sealed class PanelPreview
{
    private readonly PairTable table;

    /// <summary>A preview.</summary>
    /// <param name="stack">What can be printed.</param>
    /// <param name="day">The light by day.</param>
    /// <param name="night">The light with the lamp on.</param>
    /// <param name="nightWeight">Weight of the night view against the day view, 0.01 to 100.</param>
    /// <param name="whiteStrength">Share of the full laydown of every white layer, 0.01 to 1.</param>
    /// <param name="liftPercent">L* that day black becomes, 0 to 60.</param>
    /// <param name="nightExposure">Night white over the light of the bare panel, 0.02 to 1.</param>
    /// <exception cref="ArgumentException">The scenes do not fit each other or a value is outside its range.</exception>
    public PanelPreview(
        PanelStack stack, Scene day, Scene night, double nightWeight, double whiteStrength, double liftPercent, double nightExposure)
    {
        PanelModel model = new(stack, day, night);
        PanelLight light = model.At(Bounds.Within(whiteStrength, 0.01, 1));
        Aim = PanelAim.For(light, stack.Limits, liftPercent, Bounds.Within(nightExposure, 0.02, 1));
        SpectralWeights room = SpectralWeights.For(day.Room), lamp = SpectralWeights.For(night.Lamp);
        table = new(new PairSolver(light, stack.Limits, Aim, nightWeight), inks => Shown(light, room, lamp, inks));
    }

    /// <summary>Whites of both views, lift and exposure.</summary>
    public PanelAim Aim { get; }

    /// <summary>Nodes solved until now.</summary>
    public int NodeCount => table.NodeCount;

    /// <summary>Light of pixels.</summary>
    /// <param name="pair">Six values a pixel, as <see cref="PairPicture.Pixels"/>.</param>
    /// <param name="room">Receives D, three values a pixel: the perfect diffuser in the room is 1, 1, 1.</param>
    /// <param name="lamp">Receives N, three values a pixel, for a lamp of the luminance of that diffuser.</param>
    /// <exception cref="ArgumentException">A span has another length.</exception>
    public void Pixels(ReadOnlySpan<float> pair, Span<float> room, Span<float> lamp)
    {
        if (2 * room.Length != pair.Length || 2 * lamp.Length != pair.Length)
        {
            throw new ArgumentException(
                Invariant($"{room.Length} and {lamp.Length} values out for {pair.Length}: wanted half as many each."), nameof(room));
        }

        Span<float> wish = stackalloc float[6], light = stackalloc float[6];
        for (int at = 0; at + 6 <= pair.Length; at += 6)
        {
            ReadOnlySpan<float> here = pair.Slice(at, 6);
            if (at == 0 || !here.SequenceEqual(pair.Slice(at - 6, 6)))
            {
                Lab day = Aim.Day(new(here[0], here[1], here[2]));
                (wish[0], wish[1], wish[2]) = ((float)day.L, (float)day.A, (float)day.B);
                here[3..].CopyTo(wish[3..]);
                table.Inks(wish, light);
            }

            light[..3].CopyTo(room[(at / 2)..]);
            light[3..].CopyTo(lamp[(at / 2)..]);
        }
    }

    private static float[] Shown(PanelLight light, SpectralWeights room, SpectralWeights lamp, double[] inks)
    {
        double[] r = new double[Bands.Count], t = new double[Bands.Count];
        light.Spectra(inks, r, t);
        Xyz white = room.White;
        (double red, double green, double blue) = Srgb.Linear(Bradford.Adapt(room.Of(r), white, WhitePoints.Srgb));
        (double lampRed, double lampGreen, double lampBlue) = Srgb.Linear(Bradford.Adapt(lamp.Of(t), white, WhitePoints.Srgb));
        return [(float)red, (float)green, (float)blue, (float)lampRed, (float)lampGreen, (float)lampBlue];
    }
}
