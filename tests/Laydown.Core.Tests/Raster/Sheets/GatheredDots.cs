using Laydown.Raster.Sheets;

namespace Laydown.Core.Tests.Raster.Sheets;

/// <summary>Keeps all dots of a sheet of one bit, and which bands came.</summary>
internal sealed class GatheredDots(int inks, int rows, int columns, params IReadOnlyList<int> there) : IDotSink
{
    private readonly Lock gate = new();

    public bool[,,] Dots { get; } = new bool[inks, rows, columns];

    public List<int> Bands { get; } = [];

    public Action<int>? Taken { get; init; }

    public bool Has(int band) => there.Contains(band);

    public void Take(DotBand band)
    {
        lock (gate)
        {
            Bands.Add(band.Number);
            for (int ink = 0; ink < inks; ink++)
            {
                for (int row = 0; row < band.Rows; row++)
                {
                    ReadOnlySpan<byte> line = band.Dots.Row(ink, row);
                    for (int x = 0; x < columns; x++)
                        Dots[ink, band.FirstRow + row, x] = (line[x / 8] & (0x80 >> (x % 8))) != 0;
                }
            }

            Taken?.Invoke(Bands.Count);
        }
    }
}
