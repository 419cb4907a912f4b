using Laydown.Colour.Inversion;
using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Press.Inks;

namespace Laydown.Shop.Colour;

/// <summary>Files of colour work that have a format of their own: read as hostile, written as bytes.</summary>
public interface IColourFiles
{
    /// <summary>Readings of a chart in a file, whatever its format.</summary>
    /// <param name="path">Full path.</param>
    Reading<ReadingSet> Readings(string path);

    /// <summary>Readings of a chart from bytes, whatever their format.</summary>
    /// <param name="name">Name of the file for messages.</param>
    /// <param name="bytes">The whole file.</param>
    Reading<ReadingSet> Readings(string name, ReadOnlyMemory<byte> bytes);

    /// <summary>Readings as CGATS.17 text.</summary>
    byte[] ReadingsText(ReadingSet readings);

    /// <summary>Columns of numbers in a CSV file with a line of names.</summary>
    /// <param name="path">Full path.</param>
    /// <param name="wanted">Names of the columns wanted, any case, in any order; other columns are left.</param>
    Reading<NumberTable> Numbers(string path, IReadOnlyList<string> wanted);

    /// <summary>A print condition's file.</summary>
    Reading<PrintCondition> Condition(string path);

    /// <summary>Bytes of a print condition's file.</summary>
    byte[] ConditionText(PrintCondition condition);

    /// <summary>An ink set's file.</summary>
    Reading<InkSet> InkSet(string path);

    /// <summary>Bytes of an ink set's file.</summary>
    byte[] InkSetText(InkSet inks);

    /// <summary>A file of ink optics, checked ink by ink and band by band.</summary>
    Reading<InkOptics> InkOptics(string path);

    /// <summary>Bytes of a file of ink optics.</summary>
    byte[] InkOpticsText(InkOptics optics);

    /// <summary>The library of named colours in a file; empty where there is no file.</summary>
    Reading<ColourLibrary> Library(string path);

    /// <summary>Bytes of a library's file.</summary>
    byte[] LibraryText(ColourLibrary library);

    /// <summary>Bytes of an ICC output profile.</summary>
    /// <param name="tables">Its tables.</param>
    /// <param name="inkNames">Names of its inks; empty for cyan, magenta, yellow and black.</param>
    /// <param name="limits">Limits that every ink keeps in the profile too.</param>
    /// <param name="description">Name for people, ASCII.</param>
    byte[] Profile(ProfileTables tables, IReadOnlyList<string> inkNames, InkLimits limits, string description);

    /// <summary>Bytes of an ICC device link.</summary>
    /// <param name="tables">Its tables.</param>
    /// <param name="description">Name for people, ASCII.</param>
    byte[] Link(LinkTables tables, string description);
}
