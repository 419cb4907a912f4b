using Laydown.Colour.Calibration;
using Laydown.Colour.Charts;
using Laydown.Colour.Fits;
using Laydown.Colour.Readings;
using Laydown.Measures;
using Laydown.Press.Conditions;
using Laydown.Shop;
using Laydown.Shop.Colour;

namespace Laydown.Web.Http;

/// <summary>Colour over HTTP: the same use cases as the pages and the command line.</summary>
public static class ColourInterface
{
    private const long MostBytes = 64 << 20;

    /// <summary>Answers below <c>/api</c>.</summary>
    public static void Map(IEndpointRouteBuilder api)
    {
        api.MapGet("/conditions", (ShopServices shop) => ShopInterface.Answer("conditions", new { Conditions = shop.Colour.ListConditions.List() }));
        api.MapGet("/conditions/{id}", (string id, ShopServices shop) => Told("condition", shop.Colour.ShowCondition.Show(id).Then(v => Reading.Of(Shown(v))), 404));
        api.MapGet("/conditions/{id}/figures", (string id, ShopServices shop, CancellationToken cancellation) =>
            Told("condition-figures", shop.Colour.FigureCondition.Figure(id, SeparationWish.Usual, cancellation)));
        api.MapGet("/conditions/{id}/optics", (string id, ShopServices shop) =>
            Told("ink-optics", shop.Colour.ShowInkOptics.Show(id).Then(v => Reading.Of(InkOpticsAnswer.Of(v))), 404));
        api.MapPost("/conditions/{id}/optics", FitOpticsAsync);
        api.MapPost("/conditions/{id}/fit", FitAsync);
        api.MapPost("/conditions/{id}/make", MakeAsync);
        api.MapPost("/conditions/{id}/drift/{name}", DriftAsync);
        api.MapPost("/conditions/{id}/predict", (string id, ListedNumbers asked, ShopServices shop) => Predict(id, asked, shop));
        api.MapPost("/conditions/{id}/separate", (string id, ListedNumbers asked, ShopServices shop, CancellationToken cancellation) => Separate(id, asked, shop, cancellation));
        api.MapPost("/conditions/{id}/charts/{kind}", (string id, ChartKind kind, ShopServices shop, CancellationToken cancellation) =>
            Told("chart", shop.Colour.MakeChart.Make(new(id, null, kind, ReadingWay.Hand, 1), cancellation)));
        api.MapPost("/conditions/{id}/swatches", (string id, ShopServices shop, CancellationToken cancellation) =>
            Told("chart", shop.Colour.MakeSwatches.Make(id, cancellation)));
        api.MapGet("/named-colours", (ShopServices shop) => Told("named-colours", shop.Colour.NamedColours.List()));
        api.MapGet("/named-colours/on/{id}", (string id, ShopServices shop, CancellationToken cancellation) =>
            Told("solved-colours", shop.Colour.SolveNamedColours.Solve(id, SeparationWish.Usual, cancellation)));
        api.MapPut("/named-colours/{id}", async (string id, LibraryColour colour, ShopServices shop, CancellationToken cancellation) =>
            Told("named-colours", await shop.Colour.AddNamedColour.AddAsync(colour with { Id = id }, cancellation)));
        api.MapGet("/readings", (ShopServices shop) => ShopInterface.Answer("readings-list", new { Files = shop.Colour.ListReadings.List() }));
        api.MapPut("/readings/{name}", TakeAsync);
        api.MapGet("/readings/{name}/score/{id}", (string name, string id, ShopServices shop) => Told("reading-score", Model(id, shop).Then(view =>
            shop.Colour.ListReadings.Find(name).Then(path => shop.Colour.Score.Score(view.Print!, path)))));
        api.MapGet("/readings/{name}/calibration", (string name, LinearisationAim? aim, double? most, string? cleanPatch, ShopServices shop) =>
            Told("ink-calibration", shop.Colour.ListReadings.Find(name).Then(path =>
                shop.Colour.Calibrate.Calibrate(path, aim ?? LinearisationAim.ToneValue, most ?? 100, cleanPatch))));
        api.MapGet("/items/{id}/shift", ShiftAsync);
    }

    private static async Task<IResult> FitOpticsAsync(
        string id, string? said, string? overBlack, string? overWhite, string? through, string? stock, ShopServices shop, CancellationToken cancellation)
    {
        List<InputFault> faults = [];
        List<InkOpticsFile> files = [];
        foreach ((string? name, Behind behind) in new[] { (said, Behind.Unsaid), (overBlack, Behind.Black), (overWhite, Behind.White), (through, Behind.Lamp) })
        {
            if (name is null)
                continue;
            Reading<string> path = shop.Colour.ListReadings.Find(name);
            faults.AddRange(path.Faults);
            if (path.IsTaken)
                files.Add(new(path.Value, behind));
        }

        if (faults.Count == 0 && files.Count == 0)
            faults.Add(new("query", null, "said, overBlack, overWhite, through", "none", "names of readings"));
        return faults.Count > 0
            ? Refused(faults, StatusCodes.Status400BadRequest)
            : Told("ink-optics-fit", (await shop.Colour.FitInkOptics.FitAsync(id, new(files, stock), cancellation))
                .Then(f => Reading.Of(new { f.Optics, f.Findings, f.Notes })));
    }

    private static async Task<IResult> FitAsync(string id, string? readings, ShopServices shop, CancellationToken cancellation)
    {
        Reading<string> path = shop.Colour.ListReadings.Find(readings ?? "");
        return !path.IsTaken
            ? Refused(path.Faults, StatusCodes.Status400BadRequest)
            : Told("condition", (await shop.Colour.FitCondition.FitAsync(id, path.Value, FitChoices.Usual, null, cancellation)).Then(v => Reading.Of(Shown(v))));
    }

    private static async Task<IResult> MakeAsync(string id, double? total, BlackAmount? black, ShopServices shop, CancellationToken cancellation)
    {
        SeparationWish wish = SeparationWish.Usual with { TotalPercent = total, Black = black ?? BlackAmount.Medium };
        Reading<ConditionView> made = await shop.Colour.MakeCondition.MakeAsync(id, new(wish, MakeWish.Usual.Nodes), null, cancellation);
        return Told("condition", made.Then(v => Reading.Of(Shown(v))));
    }

    private static async Task<IResult> DriftAsync(string id, string name, ShopServices shop, HttpContext context, CancellationToken cancellation) =>
        await BodyAsync(context, cancellation) is { } body
            ? Told("drift", await shop.Colour.CheckDrift.CheckAsync(id, name, body, cancellation))
            : TooLong(name);

    private static async Task<IResult> TakeAsync(string name, ShopServices shop, HttpContext context, CancellationToken cancellation)
    {
        if (await BodyAsync(context, cancellation) is not { } body)
            return TooLong(name);
        Reading<TakenReadings> taken = await shop.Colour.TakeReadings.TakeAsync(name, body, cancellation);
        return Told("readings", taken.Then(t => Reading.Of(new
        {
            t.FileName,
            t.Readings.Name,
            t.Readings.InkNames,
            Readings = t.Readings.Patches.Count,
            Patches = t.Averaged.Set.Patches.Count,
            t.Readings.Notes,
            t.Averaged.Findings,
        })));
    }

    private static IResult Predict(string id, ListedNumbers asked, ShopServices shop) =>
        Told("predicted", Model(id, shop).Then(view => PredictColours.Predict(view.Print!, asked.Rows ?? [])));

    private static IResult Separate(string id, ListedNumbers asked, ShopServices shop, CancellationToken cancellation) =>
        Told("separated", Model(id, shop).Then(view => SeparateColours.Separate(
            view.Print!, asked.Rows ?? [], SeparationWish.OfCondition(SeparationWish.Usual, view.Condition, view.Print!), cancellation)));

    private static async Task<IResult> ShiftAsync(string id, int? page, string? condition, ShopServices shop, CancellationToken cancellation) =>
        Told("item-shift", (await shop.Colour.MapShift.MapAsync(id, page ?? 1, condition, cancellation)).Then(s => Reading.Of(s with
        {
            PicturePath = Path.GetFileName(s.PicturePath),
            ProofPath = Path.GetFileName(s.ProofPath),
            MapPath = Path.GetFileName(s.MapPath),
        })));

    private static Reading<ConditionView> Model(string id, ShopServices shop) => shop.Colour.ShowCondition.Show(id).Then(view => view.Print is not null
        ? Reading.Of(view)
        : Reading.Refused<ConditionView>(new InputFault("catalogue", null, "print condition", Invariant($"'{id}' without a model"), "one that was fitted")));

    private static object Shown(ConditionView view) => new
    {
        view.Condition,
        Model = view.Print is null ? null : new { view.Print.Name, view.Print.Kind, view.Print.InkNames },
        view.Report,
        view.Kept,
    };

    private static async Task<byte[]?> BodyAsync(HttpContext context, CancellationToken cancellation)
    {
        if (context.Request.ContentLength is null or > MostBytes)
            return null;
        if (context.Features.Get<Microsoft.AspNetCore.Http.Features.IHttpMaxRequestBodySizeFeature>() is { IsReadOnly: false } limit)
            limit.MaxRequestBodySize = MostBytes;
        using MemoryStream bytes = new();
        await context.Request.Body.CopyToAsync(bytes, cancellation);
        return bytes.ToArray();
    }

    private static IResult Told<T>(string schema, Reading<T> reading, int refusal = StatusCodes.Status400BadRequest)
        where T : notnull => reading.IsTaken ? ShopInterface.Answer(schema, reading.Value) : Refused(reading.Faults, refusal);

    private static IResult TooLong(string name) => Refused(
        [new InputFault(name, null, "Content-Length", "none or too many bytes", Invariant($"at most {MostBytes} bytes, said beforehand"))], StatusCodes.Status400BadRequest);

    private static IResult Refused(IReadOnlyList<InputFault> faults, int status) => ShopInterface.Answer("faults", new { Faults = faults }, status);
}
