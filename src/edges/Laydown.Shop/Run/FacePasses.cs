using Laydown.Press.Stacks;
using Laydown.Raster.Passes;

namespace Laydown.Shop.Run;

/// <summary>Passes of one face of a sheet.</summary>
/// <param name="Face">The face.</param>
/// <param name="Layers">Layers printed in one go.</param>
/// <param name="Head">The head and its walk.</param>
/// <param name="Rows">Rows of the sheet.</param>
/// <param name="Scans">Scans of the carriage.</param>
/// <param name="StepMm">Feed between scans, mm.</param>
/// <param name="ClosestColumns">Closest columns one nozzle fires in one pass.</param>
/// <param name="FiringKhz">Firing rate a nozzle needs at the mode's speed, kHz.</param>
/// <param name="MostKhz">Firing rate a nozzle has, kHz.</param>
public sealed record FacePasses(
    SheetFace Face, int Layers, HeadFigures Head, int Rows, int Scans, double StepMm, int ClosestColumns, double FiringKhz, double MostKhz)
{
    /// <summary>Whether the nozzles can fire as the deal of dots asks for.</summary>
    public bool FiresInTime => FiringKhz <= MostKhz + 1e-9;

    /// <summary>Which nozzle fires which dot.</summary>
    public PassPlan Plan() => new(Head, Rows);
}
