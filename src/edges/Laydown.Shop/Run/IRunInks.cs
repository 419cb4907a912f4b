using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>Looks into the press files of a made run.</summary>
public interface IRunInks
{
    /// <summary>A small picture of the ink of one sheet from the contone files of some layers.</summary>
    /// <param name="folder">The run folder.</param>
    /// <param name="sheet">Sheet from 1.</param>
    /// <param name="layers">Layers from 0 in the stack, in the order wanted.</param>
    /// <param name="inks">The ink set, whose names stand in the files.</param>
    /// <param name="mostRows">Most rows of the picture.</param>
    /// <param name="mostColumns">Most columns of the picture.</param>
    /// <returns>The planes with their layer (from 0 among <paramref name="layers"/>) and the picture, or what is wrong with the
    /// files.</returns>
    Reading<(IReadOnlyList<(int Layer, InkRole Role)> Planes, BandPicture Picture)> Small(
        string folder, int sheet, IReadOnlyList<int> layers, InkSet inks, int mostRows, int mostColumns);

    /// <summary>Part of the dots of one ink, packed rows one after the other.</summary>
    /// <param name="folder">The run folder.</param>
    /// <param name="file">Name of a dot file in it.</param>
    /// <param name="firstRow">First row.</param>
    /// <param name="rows">How many; fewer come where the file ends.</param>
    /// <param name="firstColumn">First column.</param>
    /// <param name="columns">How many; fewer come where the file ends.</param>
    /// <returns>Bits a dot, bytes a row, rows, columns and the bytes; or what is wrong with the file.</returns>
    Reading<(int BitsPerDot, int Stride, int Rows, int Columns, byte[] Dots)> Dots(string folder, string file, int firstRow, int rows, int firstColumn, int columns);
}
