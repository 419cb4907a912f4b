namespace Laydown.Bench;

/// <summary>A whole sheet made into dots, pictures in files to dot files on disk.</summary>
/// <param name="What">Which sheet and how.</param>
/// <param name="Gigapixels">Dots of one ink, thousand millions.</param>
/// <param name="Inks">Files.</param>
/// <param name="Bits">Bits a dot.</param>
/// <param name="Seconds">Wall time without the flush to disk, s.</param>
/// <param name="FlushSeconds">The flush, s.</param>
/// <param name="DiskSeconds">Writing as many bytes in one go and flushing them, in the same run, s.</param>
/// <param name="CpuSeconds">Processor time, s.</param>
/// <param name="PeakMb">Most memory of the process, the runtime's own included, MiB.</param>
/// <param name="PeakFormulaMb">What the engine's formula gives, MiB.</param>
/// <param name="Checksum">Hash over the dots.</param>
internal sealed record BoardRow(
    string What, double Gigapixels, int Inks, int Bits, double Seconds, double FlushSeconds, double DiskSeconds,
    double CpuSeconds, double PeakMb, double PeakFormulaMb, string Checksum)
{
    /// <summary>Dots of one ink a second of wall time, million.</summary>
    public double MpxPerS => Gigapixels * 1000 / Seconds;
}
