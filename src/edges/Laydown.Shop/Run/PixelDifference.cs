namespace Laydown.Shop.Run;

/// <summary>What differs between two press files of the same shape.</summary>
/// <param name="Different">Pixels or dots that differ in any ink.</param>
/// <param name="All">Pixels or dots there are.</param>
/// <param name="FirstRow">Row of the first that differs, from the top, from 0.</param>
/// <param name="FirstColumn">Its column, from 0.</param>
/// <param name="Largest">Largest difference of one value: codes of 255, or of drops.</param>
/// <param name="Inks">Each ink.</param>
public sealed record PixelDifference(long Different, long All, int FirstRow, int FirstColumn, int Largest, IReadOnlyList<InkDifference> Inks)
{
    /// <summary>Share that differs, percent.</summary>
    public double Percent => 100.0 * Different / All;
}
