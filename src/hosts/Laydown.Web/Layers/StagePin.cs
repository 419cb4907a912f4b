namespace Laydown.Web.Layers;

/// <summary>A customer's place on the picture.</summary>
/// <param name="Number">Its number in the list of answers, from 1.</param>
/// <param name="X">From the left edge of the finished piece, mm.</param>
/// <param name="Y">From its top edge, mm.</param>
/// <param name="Done">Whether it was dealt with.</param>
public sealed record StagePin(int Number, double X, double Y, bool Done);
