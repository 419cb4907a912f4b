using System.Text.Json;
using Laydown.Layout.Hands;
using Laydown.Measures;
using Laydown.Plan.Runs;
using Laydown.Shop;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;
using Laydown.Web.Layout;

namespace Laydown.Web.Http;

/// <summary>Layouts of runs by hand over HTTP: judged, changed, finished while one looks, saved. Nothing is kept here but what is saved.</summary>
public static class LayoutInterface
{
    private const int UsualSeconds = 60;

    /// <summary>Answers below <c>/api/runs/{id}/layout</c> and <c>/api/layout-searches</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api").DisableAntiforgery();
        api.MapGet("/runs/{id}/layout", ReadAsync);
        api.MapPost("/runs/{id}/layout/check", CheckAsync);
        api.MapPost("/runs/{id}/layout/edit", EditAsync);
        api.MapPost("/runs/{id}/layout/finish", FinishAsync);
        api.MapPut("/runs/{id}/layout", SaveAsync);
        api.MapGet("/layout-searches/{search}", Watch);
        api.MapPost("/layout-searches/{search}/stop", (string search, LayoutDesk desk) =>
            desk.Stop(search) ? ShopInterface.Answer("layout-search", new { Search = search, Stopped = true }) : NoSearch(search));
    }

    private static async Task<IResult> ReadAsync(string id, ShopServices shop, LayoutDesk desk, CancellationToken cancellation) =>
        (await desk.OpenAsync(id, fresh: true, cancellation)).Match(
            opened => ShopInterface.Answer("hand-layout", Shown(opened, shop, desk)), f => Refused(f, StatusCodes.Status404NotFound));

    /// <summary>A layout with its rules, its pieces and its judgement, as pages and programs get it.</summary>
    internal static object Shown(OpenedLayout opened, ShopServices shop, LayoutDesk desk) => new
    {
        RunId = opened.Record.Run.Id,
        opened.Mark,
        Closed = opened.Closed?.ToString(),
        Released = opened.Released?.ToString(),
        opened.Record.Release,
        ShortMark = LayoutMark.Short(opened.Mark),
        Mirrored = opened.Formed.Stack.Layers.Count > 0 && opened.Formed.Stack.Layers[0].Mirrored,
        opened.Rules.IsRoll,
        opened.Rules.Process,
        opened.Rules.GapMm,
        opened.Rules.EdgeMarginMm,
        opened.Rules.LeadMm,
        Pieces = opened.Rules.Pieces.Select(p => new
        {
            p.Id,
            Name = opened.Names[p.Id],
            Printed = opened.Rooms.PrintedOf(p),
            Around = opened.Rooms.Of(p.Id),
            p.Quantity,
            p.MayTurn,
            p.Part,
            Whole = WholeOf(opened, p.Id),
            Rings = RingsOf(opened, p.Id),
        }),
        opened.Sheets,
        Report = shop.Layouts.Judge.Judge(opened, opened.Sheets, desk.Measured(opened)),
    };

    private static SizeMm? WholeOf(OpenedLayout opened, string pieceId) =>
        opened.Context.Items.FirstOrDefault(i => i.Item.Id == pieceId.Split('/')[0])?.Item.Printed;

    // Corners of its contour as flat lists x, y, x, y, outer ring first; null where the printed rectangle counts.
    private static IReadOnlyList<IReadOnlyList<double>>? RingsOf(OpenedLayout opened, string pieceId) => opened.Rules.Contours?.Of(pieceId) is { } outline
        ? [.. outline.Holes.Prepend(outline.Outer).Select(r => (IReadOnlyList<double>)[.. r.SelectMany(p => (double[])[Math.Round(p.XMm, 2), Math.Round(p.YMm, 2)])])]
        : null;

    private static Task<IResult> CheckAsync(string id, HttpContext context, ShopServices shop, LayoutDesk desk) =>
        WithAsync(id, context, desk, (opened, body, sheets) => Task.FromResult(ShopInterface.Answer("layout-report", new
        {
            Report = shop.Layouts.Judge.Judge(opened, sheets, desk.Measured(opened)),
        })));

    private static Task<IResult> EditAsync(string id, HttpContext context, ShopServices shop, LayoutDesk desk) =>
        WithAsync(id, context, desk, (opened, body, sheets) => Task.FromResult(body.Edit is null
            ? Refused([new("layout", null, "/edit", "nothing", "what is done to the layout")])
            : opened.Released is { } released && body.Edit.Verb != HandVerb.Look ? Refused([released], StatusCodes.Status409Conflict)
            : shop.Layouts.Edit.Edit(opened, sheets, body.Edit, desk.Measured(opened)).Match(e => ShopInterface.Answer("edited-layout", e), f => Refused(f))));

    private static Task<IResult> FinishAsync(string id, HttpContext context, LayoutDesk desk) =>
        WithAsync(id, context, desk, (opened, body, sheets) => Task.FromResult(
            opened.Released is { } released ? Refused([released], StatusCodes.Status409Conflict)
                : body.Seconds is { } s && !(s is > 0 and <= LayoutDesk.MostSeconds)
                ? Refused([new("layout", null, "/seconds", Invariant($"{s}"), Invariant($"over 0, at most {LayoutDesk.MostSeconds}"))])
                : desk.Start(opened, sheets, body.Seed ?? 1, body.Seconds ?? UsualSeconds) is { } search
                    ? ShopInterface.Answer("layout-search", new { Search = search, Address = Invariant($"/api/layout-searches/{search}") }, StatusCodes.Status202Accepted)
                    : Refused([new("layout", null, "searches", "too many that go on", "fewer at once")], StatusCodes.Status503ServiceUnavailable)));

    private static Task<IResult> SaveAsync(string id, HttpContext context, ShopServices shop, LayoutDesk desk) =>
        WithAsync(id, context, desk, async (opened, body, sheets) =>
        {
            Reading<IReadOnlyList<PlannedItem>> measured = await desk.MeasureAsync(opened);
            if (!measured.IsTaken)
                return Refused(measured.Faults, StatusCodes.Status409Conflict);
            Reading<RunRecord> saved = await shop.Layouts.Save.SaveAsync(id, body.Mark ?? "", sheets, measured.Value, context.RequestAborted);
            return await saved.Match(
                async run => (await desk.OpenAsync(id, fresh: true, CancellationToken.None)).Match(
                    now => ShopInterface.Answer("saved-layout", new { Run = run, Layout = Shown(now, shop, desk) }), f => Refused(f)),
                faults => Task.FromResult(Refused(faults, StatusCodes.Status409Conflict)));
        }, fresh: true);

    private static IResult Watch(string search, LayoutDesk desk, CancellationToken cancellation) => desk.Feed(search, cancellation) is { } feed
        ? TypedResults.ServerSentEvents<SearchNews>(feed)
        : NoSearch(search);

    private static async Task<IResult> WithAsync(
        string id, HttpContext context, LayoutDesk desk, Func<OpenedLayout, LayoutBody, IReadOnlyList<HandSheet>, Task<IResult>> answer, bool fresh = false)
    {
        Reading<OpenedLayout> opened = await desk.OpenAsync(id, fresh, context.RequestAborted);
        if (!opened.IsTaken)
            return Refused(opened.Faults, StatusCodes.Status404NotFound);
        LayoutBody? body;
        try
        {
            body = await JsonSerializer.DeserializeAsync<LayoutBody>(context.Request.Body, ShopJson.Compact, context.RequestAborted);
        }
        catch (JsonException failure)
        {
            return Refused([new("layout", null, failure.Path ?? "/", failure.Message, "a layout as JSON")]);
        }

        Reading<IReadOnlyList<HandSheet>> sheets = HandSheets.Read(body?.Sheets, opened.Value.Rules);
        return sheets.IsTaken ? await answer(opened.Value, body!, sheets.Value) : Refused(sheets.Faults);
    }

    /// <summary>Faults as an answer.</summary>
    internal static IResult Refused(IReadOnlyList<InputFault> faults, int status = StatusCodes.Status400BadRequest) =>
        ShopInterface.Answer("faults", new { Faults = faults }, status);

    private static IResult NoSearch(string search) =>
        Refused([new("layout", null, "search", Invariant($"no search '{(search.Length > 40 ? search[..40] : search)}'"), "one that was begun")], StatusCodes.Status404NotFound);
}
