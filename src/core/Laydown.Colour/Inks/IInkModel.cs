using Laydown.Colour.Spaces;

namespace Laydown.Colour.Inks;

/// <summary>What a print looks like for given inks: the one thing that inversion, gamut and tables need to know of a model.</summary>
/// <remarks>Inks are parts of one full ink, 0 to 1, in a fixed order. Colours are seen under D50 by the 2° observer.</remarks>
public interface IInkModel
{
    /// <summary>Number of inks.</summary>
    int Inks { get; }

    /// <summary>Tristimulus values of the bare stock; the perfect diffuser has Y = 100.</summary>
    Xyz White { get; }

    /// <summary>Tristimulus values of a mixture.</summary>
    /// <param name="coverages">One for each ink, 0 to 1.</param>
    /// <exception cref="ArgumentException">Another number of inks.</exception>
    Xyz ToXyz(ReadOnlySpan<double> coverages);

    /// <summary>Tristimulus values and how they change with each ink.</summary>
    /// <param name="coverages">One for each ink, 0 to 1.</param>
    /// <param name="slopes">Receives for each ink dX, dY, dZ for one unit of ink.</param>
    /// <exception cref="ArgumentException">Another number of inks or slopes.</exception>
    Xyz ToXyz(ReadOnlySpan<double> coverages, Span<Xyz> slopes);
}
