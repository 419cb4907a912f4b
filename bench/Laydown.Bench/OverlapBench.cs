using System.Diagnostics;
using System.Text;
using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Raster.Scaling;
using Laydown.Raster.Screens;
using Laydown.Raster.Separation;
using Laydown.Raster.Sheets;
using Laydown.Shop.Artwork;
using NetVips;

namespace Laydown.Bench;

/// <summary>A page of 600 × 900 mm with a picture, many shapes and large letters of its own, rendered at the press's resolution and made into dots of four inks.</summary>
internal static class OverlapBench
{
    private const double WidthMm = 600, HeightMm = 900, PointsPerMm = 72 / 25.4;
    private const string Profile = "/usr/share/color/icc/ghostscript/default_cmyk.icc";
    private const int Runs = 2, Shapes = 1500;

    /// <summary>Measures the page at two resolutions.</summary>
    public static async Task<IReadOnlyList<OverlapRow>> RunAsync(RasterPictures pictures, string folder, CancellationToken cancellation)
    {
        string pdf = Path.Combine(folder, "page.pdf");
        Write(pdf, pictures);
        List<OverlapRow> rows = [];
        foreach (double ppi in new[] { 360.0, 720 })
            rows.Add(await MeasureAsync(pdf, ppi, folder, cancellation));
        return rows;
    }

    private static async Task<OverlapRow> MeasureAsync(string pdf, double ppi, string folder, CancellationToken cancellation)
    {
        PlateStream stream = new(new IntakeLimits(Path.Combine(folder, "scratch")));
        RenderRequest request = new(pdf, 1, new(WidthMm, HeightMm), 0, ppi, Profile);
        double raster = double.MaxValue, rest = double.MaxValue, together = double.MaxValue, pixels = 0;
        for (int run = 0; run < Runs; run++)
        {
            long start = Stopwatch.GetTimestamp();
            await using (OpenPlates plates = (await stream.OpenAsync(request, cancellation)).Value)
            {
                Whole(await plates.Ended);
                raster = Math.Min(raster, Stopwatch.GetElapsedTime(start).TotalSeconds);
                pixels = (double)plates.Rows * plates.Columns;
                start = Stopwatch.GetTimestamp();
                Dots(plates, folder, cancellation);
                rest = Math.Min(rest, Stopwatch.GetElapsedTime(start).TotalSeconds);
            }

            start = Stopwatch.GetTimestamp();
            await using OpenPlates ahead = (await stream.OpenAsync(request, cancellation)).Value;
            Dots(ahead, folder, cancellation);
            Whole(await ahead.Ended);
            together = Math.Min(together, Stopwatch.GetElapsedTime(start).TotalSeconds);
        }

        return new(Invariant($"PDF, {WidthMm} x {HeightMm} mm at {ppi} ppi"), pixels / 1e6, raster, rest, together);
    }

    private static void Dots(OpenPlates plates, string folder, CancellationToken cancellation)
    {
        SheetPicture picture = new(plates.Source, plates.Columns, plates.Rows, ScaleKernel.CatmullRom, [new PickInks([0, 1, 2, 3])], [new TotalInkLimit(260, 3)]);
        ILayerScreen screen = LayerScreens.Of(
            [new("Cyan", 0.6, null), new("Magenta", 0.6, null), new("Yellow", 0.1, null), new("Black", 1, null)], DropLevels.One, ScreenKind.Arrays);
        SheetJob job = new(
            plates.Columns, plates.Rows, [picture], [new("page", 0, 0, 0, plates.Columns, plates.Rows, 0, 0, QuarterTurn.None, false)], screen);
        SheetEngine engine = new(job, Environment.ProcessorCount);
        using FolderDots dots = new(folder, "page", engine, job);
        engine.Run(dots, null, cancellation);
    }

    private static void Whole(IReadOnlyList<InputFault> faults)
    {
        if (faults.Count > 0)
            throw new InvalidOperationException(string.Join('\n', faults));
    }

    // By hand: a picture of JPEG, shapes with curves, strokes.
    private static void Write(string path, RasterPictures pictures)
    {
        using Image natural = Image.NewFromMemory(pictures.Natural(), pictures.Width, pictures.Height, 3, Enums.BandFormat.Uchar);
        byte[] jpeg = natural.JpegsaveBuffer(q: 90);
        (double w, double h) = (WidthMm * PointsPerMm, HeightMm * PointsPerMm);
        StringBuilder page = new(Invariant($"q {w * 0.8:0.##} 0 0 {h * 0.5:0.##} {w * 0.1:0.##} {h * 0.4:0.##} cm /Im Do Q\n"));
        Random chance = new(4);
        double Part(double most) => chance.NextDouble() * most;
        for (int i = 0; i < Shapes; i++)
        {
            (double x, double y) = (Part(w), Part(h * (i % 3 == 0 ? 1 : 0.4)));
            page.Append(Invariant($"{Part(1):0.##} {Part(1):0.##} {Part(1):0.##} {Part(0.4):0.##} k {x:0.#} {y:0.#} m "))
                .Append(Invariant($"{x + Part(90):0.#} {y + Part(40):0.#} {x + Part(90):0.#} {y - Part(60):0.#} {x + Part(60):0.#} {y + Part(60):0.#} c f\n"));
        }

        using FileStream file = File.Create(path);
        List<long> places = [];
        void Text(string text) => file.Write(Encoding.Latin1.GetBytes(text));
        void Object(string text, byte[]? stream)
        {
            places.Add(file.Position);
            Text(Invariant($"{places.Count} 0 obj\n{text}\n"));
            if (stream is not null)
            {
                Text("stream\n");
                file.Write(stream);
                Text("\nendstream\n");
            }

            Text("endobj\n");
        }

        Text("%PDF-1.7\n");
        byte[] content = Encoding.Latin1.GetBytes(page.ToString());
        Object("<</Type/Catalog/Pages 2 0 R>>", null);
        Object("<</Type/Pages/Kids[3 0 R]/Count 1>>", null);
        Object(Invariant($"<</Type/Page/Parent 2 0 R/MediaBox[0 0 {w:0.####} {h:0.####}]/TrimBox[0 0 {w:0.####} {h:0.####}]/Contents 4 0 R/Resources<</XObject<</Im 5 0 R>>>>>>"), null);
        Object(Invariant($"<</Length {content.Length}>>"), content);
        Object(Invariant($"<</Type/XObject/Subtype/Image/Width {pictures.Width}/Height {pictures.Height}/ColorSpace/DeviceRGB/BitsPerComponent 8/Filter/DCTDecode/Length {jpeg.Length}>>"), jpeg);
        long table = file.Position;
        Text(Invariant($"xref\n0 {places.Count + 1}\n0000000000 65535 f \n"));
        foreach (long place in places)
            Text(Invariant($"{place:0000000000} 00000 n \n"));
        Text(Invariant($"trailer<</Size {places.Count + 1}/Root 1 0 R>>\nstartxref\n{table}\n%%EOF\n"));
    }
}
