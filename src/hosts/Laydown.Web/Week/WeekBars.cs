using System.Text.Json;
using Laydown.Plan.Drawings;
using Laydown.Plan.Week;
using Laydown.Shop;
using Laydown.Shop.Week;

namespace Laydown.Web.Week;

/// <summary>What the script of the week needs to lay its hands on the drawing: where things lie, when presses are worked, what each bar is.</summary>
internal static class WeekBars
{
    /// <summary>As JSON.</summary>
    /// <param name="week">The week.</param>
    /// <param name="drawn">Its drawing.</param>
    /// <param name="names">Names of the presses, by id.</param>
    public static string Json(WeekView week, WeekDrawn drawn, IReadOnlyDictionary<string, string> names)
    {
        Dictionary<string, WeekPlace> places = week.Chart.Plan.Places.ToDictionary(p => p.RunId, StringComparer.Ordinal);
        int end = drawn.Axis.Open is [.., var last] ? last.End : 0;
        return JsonSerializer.Serialize(
            new
            {
                left = drawn.LeftPx,
                top = drawn.TopPx,
                row = drawn.RowPx,
                bar = drawn.BarPx,
                drawn.Axis.PxPerMinute,
                spans = drawn.Axis.Open.Select(s => new[] { s.Start, s.End }),
                presses = week.Chart.Presses.Select(p => new
                {
                    p.Id,
                    name = names.GetValueOrDefault(p.Id, p.Id),
                    open = p.Open.Where(s => s.Start < end).Select(s => new object[] { s.Start, Math.Min(s.End, end), Clock(week.Chart.InstantOf(s.Start)) }),
                }),
                runs = week.Runs.Select(r => new
                {
                    id = r.RunId,
                    r.Title,
                    press = r.PressId,
                    setUp = places[r.RunId].SetUpStart,
                    places[r.RunId].Start,
                    places[r.RunId].End,
                    startClock = Clock(r.Start),
                    endClock = Clock(r.End),
                    late = r.LateMinutes,
                    held = r.Pinned,
                    soon = r.Frozen,
                }),
            },
            ShopJson.Compact);
    }

    private static string Clock(DateTimeOffset at) => Invariant($"{at:yyyy-MM-ddTHH:mm}");
}
