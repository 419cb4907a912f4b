namespace Laydown.Colour.Charts;

/// <summary>What a chart is printed for.</summary>
public enum ChartKind
{
    /// <summary>Step wedges of every ink and ladders of overprints: curves and limits.</summary>
    Linearise,

    /// <summary>Corners, wedges, greys and a filling to about 250 patches.</summary>
    CharacteriseSmall,

    /// <summary>With the node set of a cellular model, about 700 patches.</summary>
    CharacteriseMedium,

    /// <summary>With the node set of a cellular model, about 1500 patches.</summary>
    CharacteriseFull,

    /// <summary>A strip of full inks, tones, overprints and greys: is the press still as it was.</summary>
    Verify,

    /// <summary>Steps of white, colours alone, on white and under it, on a sheet that light comes through: optics of the inks.</summary>
    InkOptics,
}
