using Laydown.Raster.Sheets;

namespace Laydown.Core.Tests.Raster.Sheets;

/// <summary>Keeps the packed rows of a sheet, whatever the bits of a dot.</summary>
internal sealed class PackedDots : IDotSink
{
    private readonly Dictionary<(int Ink, int Row), byte[]> rows = [];
    private readonly Lock gate = new();

    public bool Has(int band) => false;

    public void Take(DotBand band)
    {
        lock (gate)
        {
            for (int ink = 0; ink < band.Dots.Inks; ink++)
            {
                for (int row = 0; row < band.Rows; row++)
                    rows.Add((ink, band.FirstRow + row), band.Dots.Row(ink, row).ToArray());
            }
        }
    }

    public byte[] Bytes(SheetJob job) =>
        [.. Enumerable.Range(0, job.Screen.Inks).SelectMany(ink => Enumerable.Range(0, job.Rows).SelectMany(row => rows[(ink, row)]))];
}
