using Laydown.Measures;

namespace Laydown.Shop.Run;

/// <summary>Reads press files at any size: from the file itself where it is looked at closely, else from a pyramid of means.</summary>
public interface IPressPlanes
{
    /// <summary>What a press file holds, or what is wrong with it.</summary>
    Reading<PressFileShape> Shape(PressFileAt file);

    /// <summary>
    /// Makes the file's pyramid where it is not there yet: whole, or not at all. Several may ask at once: it is made once. Parts can be read without asking before; asking early saves
    /// whoever looks first the waiting.
    /// </summary>
    /// <param name="file">The file.</param>
    /// <param name="cancellation">Stops waiting; what is being made for others goes on.</param>
    /// <returns>What the file holds, or what is wrong with it.</returns>
    Task<Reading<PressFileShape>> ReadyAsync(PressFileAt file, CancellationToken cancellation);

    /// <summary>Mean coverage of a part, 8 bits: ink after ink, rows × columns, 0 = bare, 255 = full laydown.</summary>
    /// <param name="file">The file.</param>
    /// <param name="part">The part; within its level.</param>
    /// <param name="cancellation">Stops.</param>
    /// <returns>The codes, or what is wrong with the file.</returns>
    Task<Reading<byte[]>> ReadAsync(PressFileAt file, PressPart part, CancellationToken cancellation);

    /// <summary>Codes of dots of a part of level 0, one byte each; for contone the values themselves, ink after ink.</summary>
    /// <param name="file">The file.</param>
    /// <param name="part">The part; its level is not looked at.</param>
    /// <returns>The codes, or what is wrong with the file.</returns>
    Reading<byte[]> Codes(PressFileAt file, PressPart part);
}
