using Laydown.Measures;
using Laydown.Raster.Scaling;
using Laydown.Raster.Tiles;

namespace Laydown.Raster.Sheets;

/// <summary>A picture that pieces of a sheet show, and the way from its plates to laydown at the resolution of the press.</summary>
public sealed record SheetPicture
{
    /// <summary>A picture.</summary>
    /// <param name="plates">What was rendered, at any resolution. Read from several threads at once.</param>
    /// <param name="columns">Columns of the whole picture at the resolution of the press, at least 1.</param>
    /// <param name="rows">Rows of it, at least 1.</param>
    /// <param name="kernel">How it is brought to that size.</param>
    /// <param name="atSource">Stages before scaling: those that look at one pixel alone, such as colour.</param>
    /// <param name="atPress">Stages after scaling: chokes, masks, limits.</param>
    public SheetPicture(
        ITileSource plates, int columns, int rows, ScaleKernel kernel, IReadOnlyList<ITileStage> atSource, IReadOnlyList<ITileStage> atPress)
    {
        Plates = plates;
        Columns = Bounds.Within(columns, 1, int.MaxValue);
        Rows = Bounds.Within(rows, 1, int.MaxValue);
        Kernel = kernel;
        AtSource = atSource;
        AtPress = atPress;
        Inks = StageRun.InksOf(atPress, StageRun.InksOf(atSource, plates.Inks));
    }

    /// <summary>What was rendered.</summary>
    public ITileSource Plates { get; }

    /// <summary>Columns at the resolution of the press.</summary>
    public int Columns { get; }

    /// <summary>Rows at the resolution of the press.</summary>
    public int Rows { get; }

    /// <summary>How it is brought to size.</summary>
    public ScaleKernel Kernel { get; }

    /// <summary>Stages before scaling.</summary>
    public IReadOnlyList<ITileStage> AtSource { get; }

    /// <summary>Stages after scaling.</summary>
    public IReadOnlyList<ITileStage> AtPress { get; }

    /// <summary>How many inks come out.</summary>
    public int Inks { get; }

    /// <summary>How far the stages after scaling look to each side, pixels of the press.</summary>
    internal int PressReach => StageRun.ReachOf(AtPress);
}
