using Laydown.Measures;
using Laydown.Press;
using Laydown.Press.Cure;
using Laydown.Press.Heat;
using Laydown.Press.HoldDown;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;

namespace Laydown.Plan.Runs;

/// <summary>How the press is set for a run, on the safe side until the sheet is measured.</summary>
public static class SetUps
{
    /// <summary>Name of the figure of growth between two faces.</summary>
    internal const string GrowthName = "growth of the sheet if turned before it has cooled";

    /// <summary>Free height over a flat sheet from which drops blur and mist, mm; common practice, no source (3 mm to 4 mm).</summary>
    public const double HighDropMm = 3;

    /// <summary>How a refusal ends that tells of stock that is not there.</summary>
    internal const string OrderEnding = "Order more before release.";

    /// <summary>Works out the set-up of a run.</summary>
    /// <param name="request">The run.</param>
    /// <param name="mode">The mode picked.</param>
    /// <param name="inks">Its ink.</param>
    public static SetUp Of(RunRequest request, Mode mode, IReadOnlyList<InkUse> inks)
    {
        // Every stock of the run passes under the same heads and lamps: the highest sets the heads, and what speaks against one speaks against the run.
        (Stock Stock, SheetWarmth Warmth)[] warm = [.. request.Stocks.Select(s => (s, Warmth(request, mode, s)))];
        SheetHeight[] heights = [.. warm.Select(w => SheetHeights.Of(
            request.Press, w.Stock, InkNeeds.HighestInkUm(request, mode), InkNeeds.MeanInkUm(request, mode), w.Warmth.DifferenceK))];
        (SheetWarmth warmth, SheetHeight height) = (warm[0].Warmth, heights.MaxBy(h => h.HighestPointMm)!);
        Figure dose = Dose.OfLastLayer(request.Press.Lamp, mode);
        double massKg = request.Stocks.Max(SheetMassKg);
        List<string> refusals = [.. heights.SelectMany(h => h.Refusals).Distinct(), .. request.Stocks.SelectMany(s => StockRefusals(request, s))];
        refusals.AddRange(warm.Where(w => SheetWarmths.RoomC + w.Warmth.RiseK > w.Stock.MaxTemperatureC).Select(w => TooWarm(w.Stock, w.Warmth)));
        if (height.HeadHeightMm > 30)
            refusals.Add(Invariant($"The heads would have to stand {height.HeadHeightMm:0.0} mm over the belt; 30 mm is the most a set-up holds."));
        return new(SheetHeights.ClearanceMm, height.HighestPointMm, HeadGap.FromMm(Math.Min(30, height.HeadHeightMm)),
            Measure(request, height), mode.LampPercent, dose.Value, massKg, HoldDown(request), refusals,
            [.. FirstPieceChecks.Of(request, mode), .. HighDrop(request, height)], Cautions.Of(request, massKg), [.. height.Figures, FreeHeight(request, height), dose, .. Doses(request, mode), .. warmth.Figures, .. Others(request, mode, massKg, warmth)])
        { ToBeSeen = [.. heights.SelectMany(h => h.ToBeSeen).Distinct()], InkMm = height.InkMm };
    }

    /// <summary>How warm the sheet becomes on the face with most layers.</summary>
    /// <param name="request">The run.</param>
    /// <param name="mode">The mode picked.</param>
    /// <param name="stock">Which of its stocks.</param>
    public static SheetWarmth Warmth(RunRequest request, Mode mode, Stock stock)
    {
        int layers = new ModeDemand(1, null, null, request.Stack, default).LayersByFace.DefaultIfEmpty(1).Max();
        SizeMm extent = request.Sheets.Select(s => PrintedExtent.Of(s, request.Belt, request.Stock)).MaxBy(e => e.AreaM2);
        double seconds = Scanning.Of(request.Press, mode, extent.WidthMm, extent.HeightMm, layers).Match(p => p.Seconds, _ => 0);
        return SheetWarmths.Of(request.Press, mode, stock, layers, InkNeeds.HighestInkUm(request, mode), extent.WidthMm, seconds);
    }

    /// <summary>Mass of one board or blank, or of the whole roll, without ink, kg.</summary>
    public static double SheetMassKg(Stock stock) => RollSize.MassKg(stock.WeightGPerM2, stock.WidthMm, stock.LengthMm / 1000);

    private static List<string> Measure(RunRequest request, SheetHeight height)
    {
        Stock stock = request.Stock;
        if (stock.Kind == StockKind.Roll)
        {
            return
            [
                Invariant($"Measure the film's thickness at three places across the roll; the highest wins. Reckoned with: {height.HighestPointMm:0.00} mm."),
                "Look along the web for raised edges, splices and creases before the heads pass over them.",
            ];
        }

        return
        [
            Invariant($"Measure the thickness at five points, four corners and the middle, of the first sheet and of every new pack: the highest wins. Reckoned with: {stock.ThicknessMm:0.##} mm + {stock.ThicknessToleranceMm:0.##} mm."),
            Invariant($"Lay a straight edge over every corner and edge: more than {SheetHeights.ClearanceMm - SheetHeights.LeftOverLiftMm:0.0} mm of curl stops the sheet. A short curl is not sucked down: flatten, tape or change it."),
            Invariant($"Set the head height to the highest measured point + {SheetHeights.ClearanceMm:0.0} mm, never lower than needed by the sheet in hand."),
            .. VacuumCounts(request, height) ? [Gauge(request)] : Array.Empty<string>(),
        ];
    }

    // A hump that sets the heads was reckoned with the vacuum pressing it down.
    private static bool VacuumCounts(RunRequest request, SheetHeight height) => height.HumpMm > height.LiftMm && request.Press.Vacuum.FullKpa > 0;

    private static string Gauge(RunRequest request) => Invariant(
        $"Sheet laid and zones open, the gauge must show {request.Press.Vacuum.FullKpa:0.#} kPa: the head height counts on it{(request.Belt.UncoveredMm > 0 ? Invariant($"; first cover the open holes beside the sheets, {request.Belt.UncoveredMm:0} mm of belt width") : "")}. Where it shows less, tape the sheets down at all edges and in the middle, or do not print.");

    private static double OverFlatMm(RunRequest request, SheetHeight height) => height.HeadHeightMm - request.Stocks.Min(s => s.ThicknessMm);

    private static Figure FreeHeight(RunRequest request, SheetHeight height) => new("free height over a flat sheet", OverFlatMm(request, height), "mm",
        Invariant($"head height {height.HeadHeightMm:0.0} mm less nominal thickness; drops fall that far where the sheet lies flat"), FigureSource.Derived);

    private static IEnumerable<string> HighDrop(RunRequest request, SheetHeight height)
    {
        if (OverFlatMm(request, height) is > HighDropMm and var free)
            yield return Invariant($"Heads stand up to {free:0.0} mm over a flat sheet: look for mist, soft edges and double lines. Sheets held flatter (tape, weights) or a mode that warms them less let the heads come down after measuring.");
    }

    // Layers of a face are printed in one go; only where there are several does each get another dose.
    private static IEnumerable<Figure> Doses(RunRequest request, Mode mode)
    {
        foreach (IGrouping<SheetFace, (int Index, Layer Item)> face in request.Stack.Layers.Index().GroupBy(l => l.Item.Face).Where(f => f.Count() > 1))
        {
            IReadOnlyList<double> doses = Dose.OfLayers(request.Press.Lamp, mode, face.Count());
            foreach ((double dose, (int number, Layer layer)) in doses.Zip(face).SkipLast(1))
            {
                yield return new(Invariant($"UV dose of layer {number + 1}, {layer.Group.ToString().ToLowerInvariant()}"), dose, "mJ/cm²",
                    Invariant($"{dose / doses[^1]:0} × that of the last layer: the lamps pass over it again with every later layer; what ink above keeps away is not taken off"), FigureSource.Derived);
            }
        }
    }

    private static string HoldDown(RunRequest request)
    {
        string zones = request.Belt.OpenZones.Count == 0 ? "No vacuum zone open" : Invariant($"Vacuum zones {string.Join(", ", request.Belt.OpenZones)} open");
        string shut = request.Belt.ShutZones.Count == 0 ? "" : Invariant($"; {string.Join(", ", request.Belt.ShutZones)} shut");
        double areaM2 = request.Belt.AcrossMm * request.Belt.FeedMm / 1e6;
        double newton = Suction.ForceN(request.Press.Vacuum.FullKpa, areaM2, request.Press.Vacuum.OpenAreaPercent);
        return request.Stock.Kind == StockKind.Roll
            ? Invariant($"{zones}{shut}. Web under even tension, no wrinkle at the belt.")
            : Invariant($"{zones}{shut}. {request.Press.Vacuum.FullKpa:0.#} kPa on {request.Press.Vacuum.OpenAreaPercent:0.#} % open area hold a sheet with about {newton / 9.81:0} kgf. Cover open holes; tape porous or fluted edges.");
    }

    private static string TooWarm(Stock stock, SheetWarmth warmth) => Invariant(
        $"{stock.Name} may reach {SheetWarmths.RoomC + warmth.RiseK:0} °C under the lamps; it bears {stock.MaxTemperatureC:0} °C. Take a mode with less lamp or fewer layers in one go.");

    /// <summary>What is said of a stock of which too little is there; null where there is enough.</summary>
    /// <param name="stock">The stock.</param>
    /// <param name="needed">Boards, blanks or whole metres that a run takes.</param>
    /// <param name="there">What of it is there for the run.</param>
    internal static string? Lack(Stock stock, int needed, int there)
    {
        bool one = needed == 1;
        string unit = stock.Kind switch { StockKind.Roll => "m of roll", StockKind.Blank => one ? "blank" : "blanks", _ => one ? "board" : "boards" };
        return needed > there ? Invariant($"{stock.Name}: {needed} {unit} {(one ? "is" : "are")} needed, {there} {(there == 1 ? "is" : "are")} on hand. {OrderEnding}") : null;
    }

    private static IEnumerable<string> StockRefusals(RunRequest request, Stock stock)
    {
        if (Lack(stock, NeededOnHand(request, stock), stock.OnHand) is { } lack)
            yield return lack;
        if (stock.Kind != StockKind.Roll)
            yield break;

        // The thickest and heaviest the roll can be is a full one.
        double diameter = RollSize.OuterDiameterMm(RollSize.CoreMm, stock.LengthMm / 1000, stock.ThicknessMm);
        double mass = SheetMassKg(stock);
        if (!request.Press.Rolls.Any(r => stock.WidthMm <= r.MaxWidthMm && diameter <= r.MaxDiameterMm && mass <= r.MaxMassKg))
            yield return Invariant($"No roll station of {request.Press.Name} takes a full roll {stock.WidthMm:0} mm wide, {diameter:0} mm thick and {mass:0} kg heavy.");
    }

    /// <summary>Boards or blanks that a run takes of one of its stocks, or whole metres of roll.</summary>
    public static int NeededOnHand(RunRequest request, Stock stock) => request.Stock.Kind == StockKind.Roll
        ? (int)Math.Ceiling(RollLengthM(request, stock) - 1e-9)
        : request.SheetsOf(stock).Sum(s => s.Repeats);

    /// <summary>Length of roll that a run takes of one of its stocks, m; of two rolls of one stock side by side both.</summary>
    public static double RollLengthM(RunRequest request, Stock stock) => request.SheetsOf(stock).Sum(s => s.Repeats * s.Sheet.HeightMm) / 1000;

    private static IEnumerable<Figure> Others(RunRequest request, Mode mode, double massKg, SheetWarmth warmth)
    {
        yield return new("mass of a sheet or roll", massKg, "kg",
            Invariant($"{request.Stock.WeightGPerM2:0.#} g/m² × {request.Stock.WidthMm:0} mm × {request.Stock.LengthMm:0} mm"), FigureSource.Definition);
        if (mode.TwoWay)
        {
            yield return new("offset of two-way lines for 1 mm of gap", 2 * mode.SpeedMPerS / Math.Max(0.001, request.Press.Carriage.DropSpeedMPerS), "mm",
                Invariant($"2 × {mode.SpeedMPerS} m/s × 1 mm / {request.Press.Carriage.DropSpeedMPerS} m/s drop speed"), FigureSource.Definition);
        }

        if (request.Stack.Layers.Select(l => l.Face).Distinct().Count() > 1)
        {
            double length = Math.Max(request.Stock.WidthMm, request.Stock.LengthMm);
            yield return new(GrowthName, Growth.OfLengthMm(length, request.Stock.GrowthPpmPerK, warmth.RiseK), "mm",
                Invariant($"{length:0} mm × {request.Stock.GrowthPpmPerK}·10⁻⁶/K × {warmth.RiseK:0.0} K; let it cool to the room before the second face"), FigureSource.Derived);
        }

        if (request.Belt.UncoveredMm > 0)
        {
            double openCm2 = request.Belt.UncoveredMm * request.Belt.FeedMm / 100 * request.Press.Vacuum.OpenAreaPercent / 100;
            yield return new("air drawn through open holes beside the sheet", Suction.LeakM3PerHour(openCm2, request.Press.Vacuum.FullKpa), "m³/h",
                Invariant($"0.6 × {openCm2:0} cm² × √(2 × {request.Press.Vacuum.FullKpa} kPa / 1.2 kg/m³)"), FigureSource.Definition);
        }
    }
}
