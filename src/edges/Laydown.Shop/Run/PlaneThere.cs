using Laydown.Press.Inks;

namespace Laydown.Shop.Run;

/// <summary>One ink at one place of a sheet.</summary>
/// <param name="Number">Ink from 1.</param>
/// <param name="Layer">Layer from 1.</param>
/// <param name="Name">Its name.</param>
/// <param name="Role">Which ink.</param>
/// <param name="Percent">Mean coverage of the value of the level that lies there, percent of a full laydown.</param>
/// <param name="Code">What the file has at the place itself: 0 to 255 for contone, for dots 0 = bare, 1 = smallest drop …</param>
/// <param name="MlPerM2">Ink there, ml/m².</param>
public sealed record PlaneThere(int Number, int Layer, string Name, InkRole Role, double Percent, int Code, double MlPerM2);
