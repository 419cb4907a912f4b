using Laydown.Colour.Spectra;
using Laydown.Measures;
using Laydown.Optics.Looks;

namespace Laydown.Optics.Panels;

/// <summary>The two views of a two-picture stack: inks in front of and behind the white → what is seen by day and lit.</summary>
/// <remarks>
/// The same light as <see cref="StackOptics"/> says, ordered so that all that does not hang on the two pictures is worked out once: per
/// band the two films enter only by how much they let through once (f, b) and there and back at one place (f2, b2), so that reflectance
/// and transmittance and their slopes are closed forms of four numbers [Kubelka1954] [Williams1953].
/// </remarks>
public sealed class PanelModel
{
    private readonly SpectralWeights room, lamp;

    /// <summary>The views of a stack in two lights.</summary>
    /// <param name="stack">The stack.</param>
    /// <param name="day">By day: the lamp is usually off.</param>
    /// <param name="night">Lit.</param>
    /// <exception cref="ArgumentException">The scenes have different things behind the piece.</exception>
    public PanelModel(PanelStack stack, Scene day, Scene night)
    {
        if (day.Backing != night.Backing)
        {
            throw new ArgumentException(
                Invariant($"Reflectance behind the piece: found {day.Backing} by day, {night.Backing} lit; wanted one."), nameof(night));
        }

        (Stack, Day, Night) = (stack, day, night);
        (room, lamp) = (SpectralWeights.For(day.Room), SpectralWeights.For(night.Lamp));
        Tones = new(stack);
        Front = new PanelFilm(stack.Layers[stack.DayLayer].Inks);
        Back = new PanelFilm(stack.Layers[stack.NightLayer].Inks);
        DayLight = new(SpectralWeights.For(day.Room), day.RoomLux / Math.PI, SpectralWeights.For(day.Lamp), day.LampCdPerM2);
        NightLight = new(SpectralWeights.For(night.Room), night.RoomLux / Math.PI, lamp, night.LampCdPerM2);
    }

    /// <summary>The stack.</summary>
    public PanelStack Stack { get; }

    /// <summary>The light by day.</summary>
    public Scene Day { get; }

    /// <summary>The light with the lamp on.</summary>
    public Scene Night { get; }

    /// <summary>Inks of both colour layers: those in front first.</summary>
    public int InkCount => Front.Inks + Back.Inks;

    /// <summary>Inks in front.</summary>
    public int FrontInks => Front.Inks;

    /// <summary>What a search moves.</summary>
    internal PanelTones Tones { get; }

    internal PanelFilm Front { get; }

    internal PanelFilm Back { get; }

    internal ViewLight DayLight { get; }

    internal ViewLight NightLight { get; }

    /// <summary>The panel at one strength of its white.</summary>
    /// <param name="whiteStrength">Share of the full laydown of every white layer, 0 to 1.</param>
    public PanelLight At(double whiteStrength) => new(this, Bounds.Within(whiteStrength, 0, 1));

    /// <summary>The same as if white and sheet spread all light: what the adding method says by itself.</summary>
    internal PanelLight Spread(double whiteStrength) => new(this, whiteStrength, allSpread: true);

    /// <summary>The panel with its films made thinner or thicker: all densities times a factor.</summary>
    internal PanelModel WithInk(double factor) => new(WithLayers(l => !l.IsWhite, i => LookInk.Colour(i.Density, factor)), Day, Night);

    /// <summary>The panel with its white made thinner or thicker.</summary>
    internal PanelModel WithWhite(double factor) => new(
        WithLayers(l => l.IsWhite, i => LookInk.White([.. i.Scatter.Select(s => s * factor)], [.. i.Absorption.Select(k => k * factor)])),
        Day, Night);

    /// <summary>The same panel before another lamp.</summary>
    internal PanelModel WithLamp(Illuminant other) =>
        new(Stack, Day, new(Night.RoomLux, Night.Room, Night.LampCdPerM2, other, Night.Backing));

    private PanelStack WithLayers(Func<LookLayer, bool> which, Func<LookInk, LookInk> change) => new(
        Stack.Sheet, [.. Stack.Layers.Select(l => which(l) ? new LookLayer(l.Face, [.. l.Inks.Select(change)]) : l)],
        Stack.ViewedFrom, Stack.Limits, Stack.Splits)
    { LightInksBare = Stack.LightInksBare };
}
