using Laydown.Shop.Run;

namespace Laydown.Output.Pyramids;

/// <summary>A press file as the lowest level that a pyramid keeps: exact sums over 2^n × 2^n pixels. One for each worker.</summary>
internal interface IBaseLevel : IDisposable
{
    /// <summary>What the file holds.</summary>
    PressFileShape Shape { get; }

    /// <summary>The lowest level kept: n.</summary>
    int Level { get; }

    /// <summary>Sum of one pixel of code 1 of 255.</summary>
    uint Unit { get; }

    /// <summary>Sums of one row of the level, ink after ink.</summary>
    /// <param name="row">Row of the level.</param>
    /// <param name="sums">Takes inks × columns of the level.</param>
    /// <exception cref="InvalidDataException">The file is damaged.</exception>
    /// <exception cref="IOException">The file cannot be read.</exception>
    void Sum(int row, ulong[] sums);
}
