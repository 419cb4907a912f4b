using Laydown.Layout.Sheets;
using Laydown.Plan.Runs;
using Laydown.Press.Machines;
using Laydown.Press.Stacks;
using Laydown.Press.Stocks;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;

namespace Laydown.Output.Documents;

/// <summary>Puts a run into the words of its set-up sheet.</summary>
internal static class SetUpContents
{
    /// <summary>Cuts across a roll that are listed one by one.</summary>
    private const int MostCuts = 12;

    /// <summary>The words of a run's set-up sheet.</summary>
    internal static SetUpContent Of(RunContext context)
    {
        Laydown.Plan.Runs.Run run = context.Run;
        return new(
            context.ShopName, run.Id, Invariant($"{context.Address}/runs/{run.Id}"), Invariant($"{context.Press.Name} · {string.Join(" · ", context.Beside.Prepend(context.Stock).Select(s => s.Name))}"),
            Invariant($"due {run.Due:yyyy-MM-dd} · layout {LayoutMark.Short(LayoutMark.Of(run.Sheets))}"), Figures(context), InkSupply.RefusalsNow(run, context.Press), [.. run.SetUp.Measure, .. run.SetUp.ToBeSeen], context.Stock.Kind == StockKind.Roll ? 3 : 5,
            Belt(context), RunDrawings.Belt(context), Layers(run.Stack), run.Stack.Because, RunDrawings.Layers(context), RunDrawings.Sheets(context),
            Mode(context), [.. run.Inks.Select(i => Ink(context.Press, i))], run.SetUp.FirstPieceChecks,
            [.. FinishWords.Of(context), .. run.Items.Select(i => new NamedValue(i.ItemId, Invariant($"{i.Title} · {i.PiecesInWords} · order {i.OrderId} · due {i.Due:yyyy-MM-dd}")))],
            run.SetUp.Cautions, [.. run.SetUp.Figures, .. run.Time.Figures], Invented(context))
        {
            Faces = [.. FaceWords.Of(run, context.Press, context.Stock, context.Items.Select(i => i.Item.BleedMm).DefaultIfEmpty(0).Min()).Select(r => new NamedValue(r.Name, r.Words))],
            FacesDrawing = RunDrawings.Faces(context),
            LetGo = LetGoRows.Of(context.LetGo),
        };
    }

    private static KeyFigure[] Figures(RunContext context)
    {
        Laydown.Plan.Runs.Run run = context.Run;
        Stock stock = context.Stock;
        Mode mode = context.Mode;
        RunTime time = run.Time;
        double inkMl = run.Inks.Sum(i => i.PrintedMl + i.SetUpMl);
        return
        [
            new("Head height over the belt", Invariant($"{(context.LetGo?.HeadGap ?? run.SetUp.HeadGap).Mm:0.0}"), "mm", context.LetGo is null ? Invariant($"reckoned; set only after measuring, highest point + {run.SetUp.GapFromSheetMm:0.0} mm") : "as measured and let go, see below"),
            new("Stock, thickness", Invariant($"{stock.ThicknessMm:0.##}"), "mm", Invariant($"± {stock.ThicknessToleranceMm:0.##} mm · {stock.Material}")),
            new("Mode", mode.Name, "", Invariant($"{mode.ScanDpi} × {mode.FeedDpi} dpi · {mode.Passes} {(mode.Passes == 1 ? "pass" : "passes")} · {(mode.TwoWay ? "two-way" : "one-way")}")),
            new("Lamp", Invariant($"{run.SetUp.LampPercent:0}"), "%", Invariant($"{run.SetUp.DoseMjPerCm2:0} mJ/cm² on the last layer · {context.Press.Lamp.WavelengthNm} nm")),
            Amount(context),
            new("Time", Invariant($"{time.TotalMinutes:0}"), "min", Invariant($"set-up {time.SetUpMinutes:0} · printing {time.PrintMinutes:0} · handling {time.HandlingMinutes:0}")),
            new("Scans for a sheet", Invariant($"{time.ScansPerSheet}"), "", Invariant($"carriage {mode.SpeedMPerS} m/s · {run.Stack.Layers.Count} {(run.Stack.Layers.Count == 1 ? "layer" : "layers")}")),
            new("Ink, all channels", Invariant($"{inkMl:0}"), "ml", Invariant($"of it {run.Inks.Sum(i => i.SetUpMl):0} ml at set-up")),
        ];
    }

    private static KeyFigure Amount(RunContext context)
    {
        int pieces = context.Run.Items.Sum(i => i.Pieces);
        string note = Invariant($"{pieces} {(pieces == 1 ? "piece" : "pieces")} · {context.Run.SetUp.SheetMassKg:0.0} kg {(context.Stock.Kind == StockKind.Roll ? "a full roll" : "each")}");
        return context.Stock.Kind switch
        {
            StockKind.Roll when context.Run.Belt.Lanes.Count > 1 => new("Two rolls, each", Invariant($"{context.Run.Sheets.Max(s => s.Sheet.HeightMm) / 1000:0.0}"), "m", note),
            StockKind.Roll => new("Roll", Invariant($"{context.Run.Sheets.Sum(s => s.Repeats * s.Sheet.HeightMm) / 1000:0.0}"), "m", note),
            StockKind.Blank => new("Blanks", Invariant($"{context.Run.SheetCount}"), "", note),
            _ => new("Boards", Invariant($"{context.Run.SheetCount}"), "", note),
        };
    }

    private static List<NamedValue> Belt(RunContext context)
    {
        BeltPlace belt = context.Run.Belt;
        bool roll = context.Stock.Kind == StockKind.Roll;
        List<NamedValue> rows =
        [
            new("Load side", roll ? "roll station, web fed under the heads" : SideOf(belt.Side)),
            new("Front lay", belt.FrontLay),
            new("Lies", Invariant($"{belt.AcrossMm:0.#} mm across the belt × {belt.FeedMm:0.#} mm along the feed{(belt.Turned ? ", turned: its width runs along the feed" : "")}")),
        ];
        rows.AddRange(belt.Lanes.Select(lane => LaneRow(context, lane, roll)));
        if (roll)
            rows.AddRange(CutsAcross(context));
        if (!roll && belt.Lanes.Count > 1 && belt.Lanes.All(l => l.Loaded > 0))
            rows.Add(new("Loading order", Invariant($"lane {string.Join(", ", belt.Lanes.OrderBy(l => l.Loaded).Select(l => l.Number))}")));
        if (!roll)
            rows.Add(new("Pieces per hour", Invariant($"{context.Run.Time.PerHour(context.Run.Items.Sum(i => i.Pieces)):0}, set-up not counted")));

        rows.Add(new("Zones to open", Zones(context.Press, belt.OpenZones)));
        rows.Add(new("Zones to shut", Zones(context.Press, belt.ShutZones)));
        rows.Add(new("Hold-down", context.Run.SetUp.HoldDown));
        return rows;
    }

    private static NamedValue LaneRow(RunContext context, Lane lane, bool roll)
    {
        bool several = context.Run.Belt.Lanes.Count > 1;
        string name = several ? Invariant($"{(roll ? "Roll" : "Lane")} {lane.Number}") : roll ? "Web" : "Side lay";
        string what = lane.BlankId is { } id ? (context.Beside.Prepend(context.Stock).FirstOrDefault(s => s.Id == id)?.Name ?? id) + ", " : "";
        string count = several && !roll ? Invariant($" · {lane.Blanks} {(lane.Blanks == 1 ? "blank" : "blanks")}{(lane.Turned == true ? ", turned" : "")}") : "";
        string kept = several && !roll && lane.EndMm > 0 ? Invariant($", kept free to {lane.EndMm:0.#} mm") : "";
        return new(name, Invariant($"{what}starts at {lane.StartMm:0.#} mm from the belt's origin, {lane.WidthMm:0.#} mm wide{kept}{count}"));
    }

    private static IEnumerable<NamedValue> CutsAcross(RunContext context)
    {
        bool several = context.Run.Belt.Lanes.Count > 1;
        foreach ((IReadOnlyList<double> across, int number) in context.Run.Sheets.Select((s, i) => (s.CutsAcrossMm ?? [], i + 1)).Where(c => c.Item1.Count > 0))
            yield return new(
                Invariant($"Cut{(several ? Invariant($" roll {number}") : "")} across at"),
                Invariant($"{string.Join(" · ", across.Take(MostCuts).Select(c => Invariant($"{c:0}")))}{(across.Count > MostCuts ? " …" : "")} mm from the start · {across.Count + 1} sections"));
        if (several)
            yield return new("Printed together", "both rolls advance as one: sheet 1 on roll 1, sheet 2 on roll 2, started at the same line");
    }

    private static string SideOf(LoadSide side) => side switch
    {
        LoadSide.Origin => "beside the belt at its origin",
        LoadSide.Far => "beside the belt across from its origin",
        _ => "front of the belt",
    };

    private static string Zones(PressDescription press, IReadOnlyList<string> ids) => ids.Count == 0
        ? "none"
        : string.Join(" · ", press.Zones.Where(z => ids.Contains(z.Id, StringComparer.Ordinal)).Select(z => Invariant($"{z.Id} ({z.StartMm:0}–{z.EndMm:0} mm)")));

    private static List<NamedValue> Layers(LayerStack stack) => [.. stack.Layers.Select((l, i) => new NamedValue(
        Invariant($"{i + 1}  {LayerText.Group(l)}"), LayerText.Detail(l)))];

    private static List<string> Mode(RunContext context) =>
    [
        .. context.Run.OnPress is { } taken ? [taken.ToString()] : Array.Empty<string>(),
        .. context.Run.Mode.Reasons,
        .. context.Run.Mode.Rejected.Select(r => Invariant($"Not {context.Press.FindMode(r.ModeId)?.Name ?? r.ModeId}: {r.Reason}")),
    ];

    private static InkRow Ink(PressDescription press, InkUse use)
    {
        IReadOnlyList<Tank> tanks = InkSupply.TanksOf(press, use);
        double level = tanks.Sum(t => t.LevelMl), low = tanks.Sum(t => t.LowMl), needed = use.PrintedMl + use.SetUpMl;
        string note = level - needed >= low ? "" : tanks.All(t => t.TopUpWhilePrinting) ? "runs low: top up during the run" : "runs low: top up before the start";
        if (note.Length == 0 && tanks.Any(t => t.Circulates))
            note = "keep it circulating";
        return new(InkWords.Of(use.Role), string.Join(' ', use.ChannelIds), use.PrintedMl, use.SetUpMl, level, low, tanks.Sum(t => t.CapacityMl), note);
    }

    private static string Invented(RunContext context)
    {
        List<string> things = [];
        if (context.Press.Invented)
            things.Add("press");
        if (context.InkSet.Invented)
            things.Add("inks");
        if (context.Stock.Invented)
            things.Add("stock");
        return things.Count == 0 ? "" : Invariant($"Invented for the demo: {string.Join(", ", things)}.");
    }
}
