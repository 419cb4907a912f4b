namespace Laydown.Raster.Sheets;

/// <summary>Takes the dots of a sheet, band by band.</summary>
public interface IDotSink
{
    /// <summary>Whether a band is there already, from an earlier make, and need not be made again. Asked from several threads.</summary>
    /// <param name="band">Band from 0.</param>
    bool Has(int band);

    /// <summary>Takes one band. Called from several threads, in any order, once for each band; the band is used again afterwards.</summary>
    /// <param name="band">The dots and what was counted in them.</param>
    void Take(DotBand band);
}
