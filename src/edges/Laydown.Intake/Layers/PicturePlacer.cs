using Laydown.Artwork.Pages;
using Laydown.Formats.Images;
using Laydown.Formats.Pdf;
using Laydown.Formats.Svg;
using Laydown.Intake.Artwork;
using Laydown.Measures;
using Laydown.Shop.Layers;
using NetVips;

namespace Laydown.Intake.Layers;

/// <summary>Lays one picture of a pair on the piece: by its shape, or the night picture by places named in both.</summary>
internal sealed class PicturePlacer(IntakeLimits limits, PairRequest request, bool night, PictureNotes notes, ScratchFolder scratch)
{
    private const int DrawnSidePx = 30_000;

    private readonly PairGrid grid = PairGrid.Of(request);
    private readonly PairSource source = night ? request.Wish.Night : request.Wish.Day;
    private readonly PairPlacing placing = night ? request.Wish.NightPlacing : request.Wish.DayPlacing;
    private readonly string path = night ? request.NightPath : request.DayPath;

    private string FileName => Path.GetFileName(path);

    private bool HasPoints => night && request.Wish.Points.Count > 0;

    private SizeMm Finished => new(request.Printed.WidthMm - (2 * request.BleedMm), request.Printed.HeightMm - (2 * request.BleedMm));

    /// <summary>The picture where it lies, or the faults.</summary>
    public Task<Reading<PlacedPicture>> PlaceAsync(PictureKind kind, CancellationToken cancellation) => kind switch
    {
        PictureKind.Pdf => PdfAsync(cancellation),
        PictureKind.Svg => Task.FromResult(Svg(cancellation)),
        _ => Task.FromResult(Raster(kind)),
    };

    private Reading<PlacedPicture> Raster(PictureKind kind) =>
        new PicturePages(limits).Open(path, kind, source.Frame, fromTopOnly: !HasPoints).Then(image =>
        {
            using (image)
            {
                using Image lab = LabPicture.Of(image, request.CmykProfilePath, night, FileName, notes);
                if (HasPoints)
                    return Registered(lab);
                return grid.Place(AspectOf(image, kind), placing, FileName, source.Frame, notes).Then(place =>
                    Reading.Of(Cut(LabPicture.Sized(lab, (int)place.WidthMm, (int)place.HeightMm), place)));
            }
        });

    private Reading<PlacedPicture> Svg(CancellationToken cancellation) =>
        SvgPage.Load(path, new SvgLimits(limits.Operations, 256, limits.Pixels, limits.SideMm)).Then(page =>
        {
            using (page)
            {
                return SizeOf(page.Size).Then(size =>
                {
                    using Image drawn = Drawn(page, size.Width, size.Height, cancellation);
                    Image lab = LabPicture.Of(drawn, request.CmykProfilePath, night, FileName, new PictureNotes("", 1));
                    return HasPoints ? Registered(lab) : Reading.Of(Cut(lab, size.Place));
                });
            }
        });

    private async Task<Reading<PlacedPicture>> PdfAsync(CancellationToken cancellation)
    {
        Reading<PageBoxes> boxes = PdfReader.Boxes(path, source.Page, PdfReading.Limits(limits));
        if (!boxes.IsTaken)
            return Reading.Refused<PlacedPicture>(boxes.Faults);
        Reading<(int Width, int Height, RectMm Place)> size = SizeOf(boxes.Value.TrimMm.Size);
        if (!size.IsTaken)
            return Reading.Refused<PlacedPicture>(size.Faults);
        (int width, int height, RectMm place) = HasPoints
            ? (size.Value.Width, size.Value.Height, new RectMm(0, 0, size.Value.Width, size.Value.Height))
            : (grid.Width, grid.Height, size.Value.Place);
        Reading<PixelFrame> frame = await new PdfPicture(limits).RenderAsync(
            path, source.Page, boxes.Value, width, height, place, request.CmykProfilePath, scratch, cancellation);
        if (!frame.IsTaken)
            return Reading.Refused<PlacedPicture>(frame.Faults);
        using Image image = ImageFile.Open(scratch.File(PdfPicture.File), ArtworkKind.Tiff, 1, fromTopOnly: !HasPoints);
        using Image lab = LabPicture.Of(image, request.CmykProfilePath, night, FileName, notes);
        if (HasPoints)
            return Registered(lab);
        PixelFrame filled = IsBlank(place) ? Within(place) : frame.Value;
        return Reading.Of(new PlacedPicture(lab.Crop(filled.Left, filled.Top, filled.FilledWidth, filled.FilledHeight), filled, IsBlank(place)));
    }

    // What is drawn anew is drawn at the size it lies at; under points about as large as it will be.
    private Reading<(int Width, int Height, RectMm Place)> SizeOf(SizeMm size)
    {
        double aspect = size.WidthMm / size.HeightMm;
        if (!HasPoints)
            return grid.Place(aspect, placing, FileName, source.Page, notes).Then(p => Reading.Of(((int)p.WidthMm, (int)p.HeightMm, p)));
        const int Unit = 10_000;
        int wide = aspect >= 1 ? Unit : (int)Math.Max(1, Unit * aspect), high = aspect >= 1 ? (int)Math.Max(1, Unit / aspect) : Unit;
        return Registration.Of(request.Wish.Points, wide, high, grid, Finished, FileName).Then(r =>
        {
            double scale = Math.Min(r.Scale, DrawnSidePx / (double)Math.Max(wide, high));
            int width = (int)Math.Max(1, Math.Round(wide * scale)), height = (int)Math.Max(1, Math.Round(high * scale));
            return Reading.Of((width, height, new RectMm(0, 0, width, height)));
        });
    }

    private Reading<PlacedPicture> Registered(Image lab) =>
        Registration.Of(request.Wish.Points, lab.Width, lab.Height, grid, Finished, FileName).Then(found =>
        {
            // A picture that becomes much smaller is first made smaller with its own kernel, so that no detail is missed between the pixels.
            double shrink = Math.Min(1, found.Scale);
            int width = (int)Math.Max(1, Math.Round(lab.Width * shrink)), height = (int)Math.Max(1, Math.Round(lab.Height * shrink));
            using Image small = LabPicture.Sized(lab, width, height);
            Registration to = found.For((double)width / lab.Width, (double)height / lab.Height);
            double covered = to.Covered(width, height, grid);
            if (covered < 1)
            {
                notes.Warn(
                    "picture-uncovered", Invariant($"as it is registered it leaves {100 * (1 - covered):0.#} % of the piece uncovered; that is dark at night."),
                    Invariant($"{100 * covered:0.#} % covered"), "100 %");
            }

            PixelFrame frame = new(grid.Width, grid.Height, 0, 0, grid.Width, grid.Height);
            return Reading.Of(new PlacedPicture(Moved(small, to), frame, false));
        });

    private Image Moved(Image lab, Registration to)
    {
        // Pixels are counted from their corners here and from their middles there.
        double x = (to.A / 2) + (to.B / 2) + to.X - 0.5, y = (to.C / 2) + (to.D / 2) + to.Y - 0.5;
        using Interpolate kernel = Interpolate.NewFromName("bicubic");
        return lab.Affine(
            [to.A, to.B, to.C, to.D], interpolate: kernel, oarea: [0, 0, grid.Width, grid.Height], odx: x, ody: y,
            background: [0, 0, 0], extend: Enums.Extend.Copy);
    }

    private PlacedPicture Cut(Image lab, RectMm place)
    {
        PixelFrame within = Within(place);
        using (lab)
        {
            return new(
                lab.Crop(within.Left - (int)place.XMm, within.Top - (int)place.YMm, within.FilledWidth, within.FilledHeight), within, IsBlank(place));
        }
    }

    private PixelFrame Within(RectMm place) => new(
        grid.Width, grid.Height, Math.Max(0, (int)place.XMm), Math.Max(0, (int)place.YMm),
        Math.Min(grid.Width, (int)(place.XMm + place.WidthMm)), Math.Min(grid.Height, (int)(place.YMm + place.HeightMm)));

    // A picture that leaves part of the finished piece bare leaves it blank; bleed that it lacks is mirrored.
    private bool IsBlank(RectMm place) => place.WidthMm < grid.FinishedWidth || place.HeightMm < grid.FinishedHeight;

    private static double AspectOf(Image image, PictureKind kind)
    {
        if (kind is not (PictureKind.Tiff or PictureKind.Png or PictureKind.Jpeg))
            return (double)image.Width / image.Height;
        SizeMm size = ImageMeasure.SizeMm(image, kind == PictureKind.Png ? ArtworkKind.Png : kind == PictureKind.Jpeg ? ArtworkKind.Jpeg : ArtworkKind.Tiff);
        return size.WidthMm / size.HeightMm;
    }

    private static Image Drawn(SvgPage page, int width, int height, CancellationToken cancellation)
    {
        const int BandBytes = 32 << 20;
        int most = Math.Max(1, BandBytes / 4 / width);
        List<Image> bands = [];
        for (int top = 0; top < height; top += most)
        {
            cancellation.ThrowIfCancellationRequested();
            int rows = Math.Min(most, height - top);
            bands.Add(Image.NewFromMemory(page.Band(width, height, top, rows), width, rows, 4, Enums.BandFormat.Uchar));
        }

        return bands.Aggregate((above, below) => above.Join(below, Enums.Direction.Vertical)).Copy(interpretation: Enums.Interpretation.Srgb);
    }
}
