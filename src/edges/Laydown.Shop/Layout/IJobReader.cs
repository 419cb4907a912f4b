using Laydown.Geometry.Outlines;
using Laydown.Layout.Jobs;
using Laydown.Measures;

namespace Laydown.Shop.Layout;

/// <summary>Reads jobs, layouts and contours from files of any origin.</summary>
public interface IJobReader
{
    /// <summary>A job with the contours its files and path data give, made sound; or every fault, each with file, field, found and wanted.</summary>
    /// <param name="path">Where it lies; files it names lie beside it.</param>
    Reading<JobRead> Job(string path);

    /// <summary>A layout that was written before.</summary>
    /// <param name="path">Where it lies.</param>
    Reading<JobLayout> Layout(string path);

    /// <summary>The shapes of a DXF or SVG file.</summary>
    /// <param name="path">Where it lies.</param>
    Reading<MendedOutlines> Contours(string path);
}
