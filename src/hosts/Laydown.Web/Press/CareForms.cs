using System.Globalization;
using Laydown.Measures;
using Laydown.Plan.Upkeep;
using Laydown.Press.Inks;
using Laydown.Shop;
using Laydown.Shop.Press;
using Microsoft.AspNetCore.Antiforgery;

namespace Laydown.Web.Press;

/// <summary>Forms of upkeep, plain, so that they work without script; each ends with the page it came from.</summary>
public static class CareForms
{
    /// <summary>Takes the forms in.</summary>
    public static void Map(IEndpointRouteBuilder routes)
    {
        routes.MapPost("/upkeep/{press}/reading", ReadingAsync);
        routes.MapPost("/upkeep/{press}/pour", PourAsync);
        routes.MapPost("/upkeep/{press}/shelf", ShelfAsync);
    }

    private static async Task<IResult> ReadingAsync(string press, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        IReadOnlyList<TankState> tanks = await TanksAsync(press, form, shop, context.RequestAborted);
        PressReading reading = new(tanks, null, form["hours"].ToString() is { Length: > 0 } hours ? Number(hours) ?? double.NaN : 0, [.. form["done"].OfType<string>()]);
        Reading<PressCarePage> page = await shop.Press.Read.WriteAsync(press, reading, context.RequestAborted);
        return Back(Invariant($"~/upkeep/{Uri.EscapeDataString(press)}"), page.Faults, "tanks");
    }

    // A tank is written where its level was read, or where lot or last day are others than those shown; a level that was not read keeps its time.
    private static async Task<IReadOnlyList<TankState>> TanksAsync(string pressId, IFormCollection form, ShopServices shop, CancellationToken cancellation)
    {
        if (shop.Catalogue.Presses.FirstOrDefault(p => p.Id == pressId) is not { } press)
            return [];
        IReadOnlyList<TankState> before = (await shop.Press.Book.ReadAsync(pressId, cancellation))?.State.Tanks ?? [];
        List<TankState> tanks = [];
        foreach (ReadTank last in await shop.Press.Levels.OfAsync(press, cancellation))
        {
            TankState? was = before.FirstOrDefault(t => t.TankId == last.TankId);
            string level = form["level-" + last.TankId].ToString(), lot = form["lot-" + last.TankId].ToString().Trim();
            DateOnly? expires = Day(form["expires-" + last.TankId].ToString());
            if (level.Length > 0)
                tanks.Add(new(last.TankId, Number(level) ?? double.NaN, lot, expires));
            else if (lot != (was?.Lot ?? "") || expires != was?.Expires)
                tanks.Add(new(last.TankId, last.LevelMl, lot, expires, last.At));
        }

        return tanks;
    }

    private static async Task<IResult> PourAsync(string press, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        PouredInk poured = new(form["tank"].ToString(), form["lot"].ToString(), Number(form["ml"].ToString()) ?? double.NaN);
        Reading<PressCarePage> page = await shop.Press.Read.WriteAsync(press, new(FromShelf: [poured]), context.RequestAborted);
        return Back(Invariant($"~/upkeep/{Uri.EscapeDataString(press)}"), page.Faults, "shelf");
    }

    private static async Task<IResult> ShelfAsync(string press, HttpContext context, IAntiforgery guard, ShopServices shop)
    {
        if (!await guard.IsRequestValidAsync(context))
            return Results.BadRequest();
        IFormCollection form = await context.Request.ReadFormAsync(context.RequestAborted);
        string[] lots = [.. form["lot"].Select(l => l?.Trim() ?? "")], roles = [.. form["role"].OfType<string>()], amounts = [.. form["ml"].Select(m => m ?? "")];
        string[] days = [.. form["expires"].Select(d => d ?? "")], places = [.. form["place"].Select(p => p?.Trim() ?? "")];
        if (new[] { roles.Length, amounts.Length, days.Length, places.Length }.Any(n => n != lots.Length) || !roles.All(r => Enum.TryParse(r, out InkRole role) && Enum.IsDefined(role)))
            return Results.BadRequest();
        IReadOnlyList<InkPack> packs = [.. Enumerable.Range(0, lots.Length).Where(i => lots[i].Length > 0 || amounts[i].Length > 0)
            .Select(i => new InkPack(lots[i], Enum.Parse<InkRole>(roles[i]), Number(amounts[i]) ?? double.NaN, Day(days[i]), places[i].Length > 0 ? places[i] : null))];
        Reading<PressCarePage> page = await shop.Press.Read.WriteAsync(press, new(Packs: packs, Shelf: form["shelf"].ToString()), context.RequestAborted);
        return Back(Invariant($"~/upkeep/{Uri.EscapeDataString(press)}"), page.Faults, "shelf");
    }

    private static double? Number(string words) => double.TryParse(words, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) ? number : null;

    private static DateOnly? Day(string words) => DateOnly.TryParseExact(words, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    private static IResult Back(string page, IReadOnlyList<InputFault> faults, string place) => faults.Count == 0
        ? Results.LocalRedirect(Invariant($"{page}#{place}"))
        : Results.LocalRedirect(Invariant($"{page}?refused={Uri.EscapeDataString(faults[0].ToString())}"));
}
