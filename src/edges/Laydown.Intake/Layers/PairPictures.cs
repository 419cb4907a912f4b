using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Shop.Layers;
using NetVips;

namespace Laydown.Intake.Layers;

/// <summary>Reads pairs of pictures from customers' files; rows are streamed, no picture is held whole.</summary>
/// <param name="limits">What is taken at most, and where work files lie.</param>
public sealed class PairPictures(IntakeLimits limits) : IPairPictures
{
    // Codes of what is left blank: L* 100 by day, L* 0 at night, without colour.
    private static readonly ushort[] White = [65535, 128 * 257, 128 * 257], Dark = [0, 128 * 257, 128 * 257];

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The size, bleed or resolution wanted makes no picture.</exception>
    public async Task<Reading<PairFile>> ReadAsync(PairRequest request, IProgress<double>? progress, CancellationToken cancellation)
    {
        Bounds.Within(request.Ppi, 1, 10_000);
        Bounds.Within(request.BleedMm, 0, 10_000);
        Bounds.Within(request.Printed.WidthMm - (2 * request.BleedMm), 1e-3, 1e6, "finished width");
        Bounds.Within(request.Printed.HeightMm - (2 * request.BleedMm), 1e-3, 1e6, "finished height");
        if (request.Printed.WidthMm * request.Printed.HeightMm * request.Ppi / 25.4 * request.Ppi / 25.4 is var pixels && pixels > limits.RenderPixels)
        {
            return Reading.Refused<PairFile>(new InputFault(
                Path.GetFileName(request.DayPath), null, "printed size × resolution", Invariant($"{pixels / 1e6:0} Mpx"), Invariant($"at most {limits.RenderPixels / 1e6:0} Mpx")));
        }

        Directory.CreateDirectory(limits.ScratchFolder);
        string stem = Path.Combine(Path.GetFullPath(limits.ScratchFolder), "pair-" + Guid.NewGuid().ToString("N"));
        (string day, string night) = (stem + "-day.raw", stem + "-night.raw");
        bool whole = false;
        try
        {
            Reading<IReadOnlyList<Finding>> first = await OneAsync(request, false, day, progress, cancellation);
            Reading<IReadOnlyList<Finding>> second = await OneAsync(request, true, night, progress, cancellation);
            if (!first.IsTaken || !second.IsTaken)
                return Reading.Refused<PairFile>([.. first.Faults, .. second.Faults]);
            PairGrid grid = PairGrid.Of(request);
            PairFile pair = new(grid.Width, grid.Height, day, night, [.. first.Value, .. second.Value]);
            whole = true;
            return Reading.Of(pair);
        }
        finally
        {
            if (!whole)
            {
                File.Delete(day);
                File.Delete(night);
            }
        }
    }

    private async Task<Reading<IReadOnlyList<Finding>>> OneAsync(
        PairRequest request, bool night, string raw, IProgress<double>? progress, CancellationToken cancellation)
    {
        PairSource source = night ? request.Wish.Night : request.Wish.Day;
        string path = night ? request.NightPath : request.DayPath, file = Path.GetFileName(path);
        int page = source.Frame ?? source.Page;
        PictureNotes notes = new(night ? "Night picture" : "Day picture", page);
        using ScratchFolder scratch = new(limits.ScratchFolder);
        try
        {
            cancellation.ThrowIfCancellationRequested();
            Reading<PictureKind> kind = PictureLook.At(path, limits);
            if (!kind.IsTaken)
                return Reading.Refused<IReadOnlyList<Finding>>(kind.Faults);
            PicturePlacer placer = new(limits, request, night, notes, scratch);
            Reading<PlacedPicture> placed = await placer.PlaceAsync(kind.Value, cancellation);
            if (!placed.IsTaken)
                return Reading.Refused<IReadOnlyList<Finding>>(placed.Faults);
            using Image lab = placed.Value.Lab;
            await Task.Run(() => Pour(lab, placed.Value, night, raw, progress, cancellation), cancellation);
            return Reading.Of(notes.All);
        }
        catch (VipsException damage)
        {
            cancellation.ThrowIfCancellationRequested();
            string words = damage.Message.ReplaceLineEndings(" ").Trim();
            return Reading.Refused<IReadOnlyList<Finding>>(new InputFault(
                file, page, "image data", Invariant($"damaged or cut short ({words})"), "a whole picture that decodes without errors"));
        }
        catch (Exception failure) when (failure is IOException or UnauthorizedAccessException)
        {
            return Reading.Refused<IReadOnlyList<Finding>>(new InputFault(file, page, "disk", failure.Message, "room for work files and leave to write them"));
        }
    }

    private static void Pour(Image lab, PlacedPicture placed, bool night, string raw, IProgress<double>? progress, CancellationToken cancellation)
    {
        PixelFrame frame = placed.Frame;
        using LabRaw file = new(raw, frame, placed.IsBlankOutside ? night ? Dark : White : null);
        lab.SetProgress(null, cancellation);
        using RowSink sink = new(frame.FilledWidth * 3 * sizeof(float), (row, bytes) =>
        {
            cancellation.ThrowIfCancellationRequested();
            file.Write(row, System.Runtime.InteropServices.MemoryMarshal.Cast<byte, float>(bytes));
            if ((row & 63) == 0)
                progress?.Report(((night ? 1 : 0) + (row / (double)frame.FilledHeight)) / 2);
        });
        ImagePlates.Pour(lab, sink, frame.FilledHeight, cancellation);
        file.Keep();
    }
}
