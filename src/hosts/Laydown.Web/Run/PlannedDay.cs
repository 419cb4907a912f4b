namespace Laydown.Web.Run;

/// <summary>What came of planning the day.</summary>
/// <param name="OrdersTaken">Orders in the shop's folder that could be taken.</param>
/// <param name="OrdersRefused">Order files that could not.</param>
/// <param name="ItemsLookedAt">Items whose artwork was looked at now.</param>
/// <param name="ItemsHeld">Of those, how many are held back.</param>
/// <param name="RunIds">Runs planned now.</param>
public sealed record PlannedDay(int OrdersTaken, int OrdersRefused, int ItemsLookedAt, int ItemsHeld, IReadOnlyList<string> RunIds);
