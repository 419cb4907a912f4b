namespace Laydown.Raster.Passes;

/// <summary>How the dots of a row are dealt out to its passes.</summary>
public enum PassMask
{
    /// <summary>Columns in turn, shifted by one from row to row: a nozzle fires every P-th column at most.</summary>
    Columns,

    /// <summary>By chance-like values without a pattern: register errors spread as noise, but a nozzle may owe neighbouring
    /// columns.</summary>
    Scattered,
}
