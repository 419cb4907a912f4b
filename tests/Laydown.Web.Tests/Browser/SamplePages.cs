namespace Laydown.Web.Tests.Browser;

/// <summary>One address of every page, and of every state a page shows differently.</summary>
internal static class SamplePages
{
    public static readonly string[] All =
    [
        "/", "/orders", "/orders/TW-1041", "/orders/TW-1044", "/items/TW-1041-1", "/items/TW-1041-2", "/items/TW-1042-1", "/items/TW-1044-1", "/items/TW-1045-1",
        "/runs", "/log", "/log/charts", "/log/review", "/log?from=2026-12-01&to=2026-11-01", "/log/overhead?from=2026-11-01&to=2026-12-31&count=due", "/runs/R-20261126-01/log", "/runs/R-20261126-02/log", "/orders/TW-1041/quote", "/orders/TW-1041/quote?breaks=1,10&ways=yes", "/runs/R-20261126-01", "/runs/R-20261126-02", "/runs/R-20261126-01/set-up", "/runs/R-20261126-02/set-up", "/runs/R-20261126-01/layout", "/runs/R-20261126-03/layout", "/conditions", "/conditions/long-belt-boards", "/conditions/short-belt-boards", "/conditions/short-belt-boards/optics", "/named-colours", "/readings", "/looks/TW-1042-1", "/looks/TW-1042-1/L-2", "/looks/TW-1042-1/L-1?with=L-2", "/proof/open", "/proof/closed", "/proof/none", "/shop", "/week", "/week/press/R-20261126-01", "/upkeep", "/upkeep/short-belt?days=30", "/stock", "/design", "/items/none",
    ];
}
