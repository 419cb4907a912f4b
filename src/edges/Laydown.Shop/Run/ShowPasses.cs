using Laydown.Measures;
using Laydown.Press.Inks;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Raster.Passes;
using Laydown.Shop.Colour;

namespace Laydown.Shop.Run;

/// <summary>Shows which scan prints what, and forecasts bands.</summary>
/// <param name="shop">The shop.</param>
/// <param name="inks">Looks into press files, or null where none can be looked into.</param>
public sealed class ShowPasses(ShopServices shop, IRunInks? inks = null)
{
    private const int MostRows = 120, MostColumns = 48;

    /// <summary>What a run asks for: its press, mode and stack, its first sheet, its nearest viewer.</summary>
    /// <returns>The wish, or a fault where the run or what it names is not there.</returns>
    public async Task<Reading<PassesWish>> WishOfAsync(string runId, CancellationToken cancellation)
    {
        if (await shop.Store.RunAsync(runId, cancellation) is not { } record)
            return Refused<PassesWish>(runId, "id", "no run of that id", "the id of a planned run");
        Laydown.Plan.Runs.Run run = record.Run;
        PressDescription? press = shop.Catalogue.Presses.FirstOrDefault(p => Is(p.Id, run.PressId));
        if (press?.FindMode(run.Mode.ModeId) is not { } mode)
            return Refused<PassesWish>(runId, "mode", Invariant($"no mode {run.Mode.ModeId} on press {run.PressId}"), "the shop as it was when the run was planned");
        HashSet<string> ids = [.. run.Items.Select(i => i.ItemId)];
        double nearest = (await shop.Store.OrdersAsync(cancellation)).SelectMany(o => o.Items)
            .Where(i => ids.Contains(i.Item.Id)).Select(i => i.Item.ViewingDistanceM).DefaultIfEmpty(1).Min();
        return Reading.Of(new PassesWish(press, mode, run.Stack, run.Sheets[0].Sheet, nearest, record));
    }

    /// <summary>A mode alone, with one layer of colour.</summary>
    /// <param name="pressId">The press; null for the first that has the mode.</param>
    /// <param name="modeId">The mode.</param>
    /// <param name="sheet">The sheet: across × along the feed, mm.</param>
    /// <param name="distanceM">Distance of the viewer, m.</param>
    /// <returns>The wish, or a fault where there is no such mode.</returns>
    public Reading<PassesWish> WishOf(string? pressId, string modeId, SizeMm sheet, double distanceM)
    {
        PressDescription? press = shop.Catalogue.Presses.FirstOrDefault(p => (pressId is null || Is(p.Id, pressId)) && p.FindMode(modeId) is not null);
        return press is null
            ? Reading.Refused<PassesWish>(new InputFault("--mode", null, "mode", modeId, Invariant(
                $"one of {string.Join(", ", shop.Catalogue.Presses.SelectMany(p => p.Modes.Select(m => Invariant($"{p.Id} {m.Id}"))))}")))
            : Reading.Of(new PassesWish(press, press.FindMode(modeId)!,
                new([new Layer(SheetFace.First, InkGroup.Colour, null, null, 1, 100, 0, false)], false, []), sheet, distanceM));
    }

    /// <summary>Passes and forecast.</summary>
    /// <param name="wish">What is asked for.</param>
    /// <param name="others">Whether the press's other modes are forecast too.</param>
    /// <returns>The view, or the faults of the mode.</returns>
    public Reading<PassesView> Show(PassesWish wish, bool others = true)
    {
        List<FacePasses> faces = [];
        foreach (IGrouping<SheetFace, Layer> face in PassWishes.Faces(wish.Stack))
        {
            Reading<PassPlan> plan = PassWishes.PlanOf(wish.Press, wish.Mode, face.Count(), wish.Sheet.HeightMm);
            if (!plan.IsTaken)
                return Reading.Refused<PassesView>(plan.Faults);
            faces.Add(Of(wish, face.Key, plan.Value));
        }

        IReadOnlyList<FaceInk> printed = InksOf(wish);
        List<ModeBands> bands = [BandsOf(wish, wish.Mode, printed)];
        if (others)
            bands.AddRange(wish.Press.Modes.Where(m => m != wish.Mode).Select(m => BandsOf(wish, m, printed)));
        return Reading.Of(new PassesView(
            wish.Run?.Run.Id, wish.Press.Id, wish.Mode.Id, wish.DistanceM, wish.Press.Placement ?? PassWishes.Assumed, wish.Press.Placement is null,
            printed.Any(p => p.Picture is not null), wish.HasDots, faces, bands));
    }

    /// <summary>The plan of the face a layer is printed on.</summary>
    /// <param name="wish">What is asked for.</param>
    /// <param name="layer">Layer from 0 in the stack.</param>
    /// <returns>The plan, or the faults of the mode.</returns>
    public static Reading<PassPlan> PlanOf(PassesWish wish, int layer) => PassWishes.PlanOf(
        wish.Press, wish.Mode, wish.Stack.Layers.Count(l => l.Face == wish.Stack.Layers[layer].Face), wish.Sheet.HeightMm);

    /// <summary>Which layer of its face a layer is, from 0 in the order they are laid down.</summary>
    /// <param name="wish">What is asked for.</param>
    /// <param name="layer">Layer from 0 in the stack.</param>
    public static int PlaceInFace(PassesWish wish, int layer) =>
        wish.Stack.Layers.Take(layer).Count(l => l.Face == wish.Stack.Layers[layer].Face);

    /// <summary>A picture of the worst place with its bands.</summary>
    /// <param name="wish">What is asked for.</param>
    /// <param name="times">How often the error is shown, 0 (without) to 100.</param>
    /// <param name="width">Pixels across.</param>
    /// <param name="height">Pixels down, along the feed.</param>
    /// <param name="pixelsPerMm">Scale.</param>
    /// <returns>The picture, or the faults of the mode.</returns>
    public Reading<RgbPicture> Preview(PassesWish wish, double times, int width, int height, double pixelsPerMm)
    {
        Bounds.Within(times, 0, 100);
        Reading<(BandWish Wish, BandForecast Forecast)> worst = Worst(wish, wish.Mode, InksOf(wish));
        return worst.Then(w =>
        {
            BandImage image = BandPreview.Draw(w.Wish, w.Forecast, times, height, width, pixelsPerMm);
            return Reading.Of(new RgbPicture(image.Columns, image.Rows, image.Rgb));
        });
    }

    /// <summary>Dots of one pass over the upper left part of a sheet: of a dot file of the run, or of a solid where there is
    /// none.</summary>
    /// <param name="plan">The plan of the face.</param>
    /// <param name="layer">Layer from 0 of that face.</param>
    /// <param name="pass">Pass from 0.</param>
    /// <param name="firstRow">First row.</param>
    /// <param name="side">Dots across and down.</param>
    /// <param name="folder">The run folder, or null for a solid.</param>
    /// <param name="file">The dot file in it.</param>
    /// <param name="firstColumn">First column.</param>
    /// <returns>Black dots on white, one pixel each; or what is wrong with the file.</returns>
    public Reading<RgbPicture> Pass(PassPlan plan, int layer, int pass, int firstRow, int side, string? folder = null, string? file = null, int firstColumn = 0)
    {
        Bounds.Within(firstRow, 0, plan.Rows - 1);
        int rows = Math.Min(side, plan.Rows - firstRow);
        Reading<(int BitsPerDot, int Stride, int Rows, int Columns, byte[] Dots)> dots = folder is null || file is null
            ? Reading.Of((1, (side + 7) / 8, rows, side, Solid((side + 7) / 8 * rows)))
            : inks?.Dots(folder, file, firstRow, rows, firstColumn, side)
                ?? Refused<(int, int, int, int, byte[])>(file, "dots", "nothing that looks into dot files", "a shop whose press files can be looked into");
        return dots.Then(d => Reading.Of(Drawn(plan, layer, pass, (firstRow, firstColumn), d)));
    }

    private static RgbPicture Drawn(
        PassPlan plan, int layer, int pass, (int Row, int Column) first, (int BitsPerDot, int Stride, int Rows, int Columns, byte[] Dots) dots)
    {
        byte[] rgb = new byte[dots.Rows * dots.Columns * 3], line = new byte[dots.Stride];
        int levels = (1 << dots.BitsPerDot) - 1;
        for (int row = 0; row < dots.Rows; row++)
        {
            PassPicture.Row(
                plan, layer, pass, first.Row + row, dots.Dots.AsSpan(row * dots.Stride, dots.Stride), dots.BitsPerDot, first.Column, line);
            for (int column = 0; column < dots.Columns; column++)
            {
                int bit = column * dots.BitsPerDot, code = (line[bit / 8] >> (8 - dots.BitsPerDot - (bit % 8))) & levels;
                rgb.AsSpan(((row * dots.Columns) + column) * 3, 3).Fill((byte)(255 - (255 * code / levels)));
            }
        }

        return new(dots.Columns, dots.Rows, rgb);
    }

    private static byte[] Solid(int bytes)
    {
        byte[] solid = new byte[bytes];
        Array.Fill(solid, byte.MaxValue);
        return solid;
    }

    private static FacePasses Of(PassesWish wish, SheetFace face, PassPlan plan) => new(
        face, plan.Layers, plan.Head, plan.Rows, plan.ScanCount, plan.Head.FeedRows * plan.Head.RowMm, plan.ClosestColumns(), plan.FiringKhz(wish.Mode.SpeedMPerS),
        wish.Press.Carriage.FiringKhz);

    // What is printed on each face: from the contone files of a made run where they can be read, else every ink of the press.
    private IReadOnlyList<FaceInk> InksOf(PassesWish wish)
    {
        List<FaceInk> all = [];
        foreach (IGrouping<SheetFace, Layer> face in PassWishes.Faces(wish.Stack))
        {
            FaceInk plain = new(face.Count(), PassWishes.PlanesOf(wish.Press, face), null);
            all.Add(Read(wish, [.. wish.Stack.Layers.Index().Where(l => l.Item.Face == face.Key).Select(l => l.Index)]) is { } read
                ? plain with { Planes = read.Planes, Picture = read.Picture }
                : plain);
        }

        return all;
    }

    private (IReadOnlyList<(int Layer, InkRole Role)> Planes, BandPicture Picture)? Read(PassesWish wish, IReadOnlyList<int> layers)
    {
        string? inkSetId = shop.Catalogue.Conditions.FirstOrDefault(c => Is(c.Id, wish.Run?.Run.ConditionId ?? ""))?.InkSetId;
        if (inks is null || wish.Run?.FolderName is not { } folder || shop.Catalogue.InkSets.FirstOrDefault(s => Is(s.Id, inkSetId ?? "")) is not { } set)
            return null;
        string path = Path.Combine(new ShopFolder(shop.Folder).Runs, folder);
        Reading<(IReadOnlyList<(int Layer, InkRole Role)> Planes, BandPicture Picture)> read = inks.Small(path, 1, layers, set, MostRows, MostColumns);
        return read.IsTaken ? read.Value : null;
    }

    private static ModeBands BandsOf(PassesWish wish, Mode mode, IReadOnlyList<FaceInk> printed) => Worst(wish, mode, printed).Match(
        w => new ModeBands(mode.Id, mode.Name, w.Forecast, Told(w.Forecast, wish.DistanceM)),
        faults => new ModeBands(mode.Id, mode.Name, null, faults[0].ToString()));

    private static Reading<(BandWish Wish, BandForecast Forecast)> Worst(PassesWish wish, Mode mode, IReadOnlyList<FaceInk> printed)
    {
        List<(BandWish Wish, BandForecast Forecast)> all = [];
        foreach (FaceInk face in printed)
        {
            Reading<PassPlan> plan = PassWishes.PlanOf(wish.Press, mode, face.Layers, wish.Sheet.HeightMm);
            if (!plan.IsTaken)
                return Reading.Refused<(BandWish, BandForecast)>(plan.Faults);
            BandWish one = PassWishes.Of(wish.Press, plan.Value, face.Planes, face.Picture, wish.DistanceM, wish.HasDots);
            all.Add((one, BandForecast.Of(one)));
        }

        return Reading.Of(all.MaxBy(f => f.Forecast.VisibleDeltaL));
    }

    private static string Told(BandForecast forecast, double distanceM) => forecast.Main == BandCause.None
        ? "No bands: nothing in the press description makes any."
        : Invariant($"{(forecast.IsDark ? "Dark" : "Light")} lines of {forecast.VisibleDeltaL:0.00} L* at most from {distanceM:0.##} m ({BandWords.Seen(forecast)}, ") +
            Invariant($"{forecast.TimesThreshold:0.0} times what the eye can just see), mostly by {BandWords.Of(forecast.Main)}. {BandWords.CureOf(forecast.Main)}");

    private static Reading<T> Refused<T>(string of, string field, string found, string wanted) =>
        Reading.Refused<T>(new InputFault(of, null, field, found, wanted));

    private static bool Is(string one, string other) => string.Equals(one, other, StringComparison.Ordinal);

    private sealed record FaceInk(int Layers, IReadOnlyList<(int Layer, InkRole Role)> Planes, BandPicture? Picture);
}
