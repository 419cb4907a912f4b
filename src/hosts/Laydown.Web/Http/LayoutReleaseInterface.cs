using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Layout;
using Laydown.Shop.Run;
using Laydown.Web.Layout;

namespace Laydown.Web.Http;

/// <summary>Releases of layouts over HTTP, and the layout of a run as files.</summary>
public static class LayoutReleaseInterface
{
    /// <summary>Answers below <c>/api/runs/{id}/layout</c>: <c>release</c>, <c>take-back</c>, <c>files</c>.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        RouteGroupBuilder api = routes.MapGroup("/api/runs/{id}/layout").DisableAntiforgery();
        api.MapPost("/release", ReleaseAsync);
        api.MapPost("/take-back", TakeBackAsync);
        api.MapGet("/files", ListAsync);
        api.MapGet("/files/{name}", FileAsync);
    }

    private static async Task<IResult> ReleaseAsync(string id, ReleaseBody body, ShopServices shop, LayoutDesk desk, TimeProvider clock, CancellationToken cancellation) =>
        await AnsweredAsync(await shop.Layouts.Release.ReleaseAsync(id, body.Mark ?? "", body.By, clock.GetLocalNow(), cancellation), shop, desk);

    private static async Task<IResult> TakeBackAsync(string id, ReleaseBody body, ShopServices shop, LayoutDesk desk, TimeProvider clock) =>
        await AnsweredAsync(await shop.Layouts.Release.TakeBackAsync(id, body.By, clock.GetLocalNow()), shop, desk);

    private static async Task<IResult> AnsweredAsync(Reading<RunRecord> changed, ShopServices shop, LayoutDesk desk) => await changed.Match(
        async run => (await desk.OpenAsync(run.Run.Id, fresh: true, CancellationToken.None)).Match(
            opened => ShopInterface.Answer("hand-layout", LayoutInterface.Shown(opened, shop, desk)), faults => LayoutInterface.Refused(faults)),
        faults => Task.FromResult(LayoutInterface.Refused(faults, StatusCodes.Status409Conflict)));

    private static async Task<IResult> ListAsync(string id, ShopServices shop, LayoutDesk desk, TimeProvider clock, CancellationToken cancellation) =>
        (await FilesAsync(id, Enum.GetValues<LayoutFormat>(), shop, desk, clock, cancellation)).Match(
            files => ShopInterface.Answer("layout-files", new
            {
                Files = files.Select(f => new { f.Name, f.Format, Bytes = f.Bytes.Length, Address = AddressOf(id, f.Name) }),
            }),
            faults => LayoutInterface.Refused(faults, StatusCodes.Status409Conflict));

    private static async Task<IResult> FileAsync(
        string id, string name, ShopServices shop, LayoutDesk desk, TimeProvider clock, HttpContext context, CancellationToken cancellation)
    {
        LayoutFormat[] formats = [.. Enum.GetValues<LayoutFormat>().Where(f => name.EndsWith(Invariant($".{f}").ToLowerInvariant(), StringComparison.Ordinal))];
        Reading<IReadOnlyList<LayoutFile>> files = await FilesAsync(id, formats, shop, desk, clock, cancellation);
        if (!files.IsTaken)
            return LayoutInterface.Refused(files.Faults, StatusCodes.Status409Conflict);
        if (files.Value.FirstOrDefault(f => string.Equals(f.Name, name, StringComparison.Ordinal)) is not { } file)
            return LayoutInterface.Refused([new(Invariant($"run {id}"), null, "name", "no file of that name", "one of those that are listed")], StatusCodes.Status404NotFound);
        context.Response.Headers.ContentSecurityPolicy = SafeHeaders.PaperPolicy;
        return Results.File(file.Bytes, TypeOf(file.Format), Invariant($"{id}-{file.Name}"));
    }

    private static async Task<Reading<IReadOnlyList<LayoutFile>>> FilesAsync(
        string id, IReadOnlyList<LayoutFormat> formats, ShopServices shop, LayoutDesk desk, TimeProvider clock, CancellationToken cancellation) =>
        shop.LayoutFiles is not { } writer
            ? Reading.Refused<IReadOnlyList<LayoutFile>>(new InputFault(Invariant($"run {id}"), null, "files", "nothing that writes them", "a shop that writes layouts"))
            : (await desk.OpenAsync(id, fresh: true, cancellation)).Then(o => new ExportLayout(writer).Files(RunJob.Of(o), Invariant($"run {id}"), formats, clock.GetUtcNow()));

    /// <summary>Where a file of a run's layout is fetched from.</summary>
    internal static string AddressOf(string runId, string name) => Invariant($"/api/runs/{Uri.EscapeDataString(runId)}/layout/files/{name}");

    private static string TypeOf(LayoutFormat format) => format switch
    {
        LayoutFormat.Json => "application/json",
        LayoutFormat.Svg => "image/svg+xml",
        LayoutFormat.Dxf => "image/vnd.dxf",
        _ => "application/pdf",
    };
}
