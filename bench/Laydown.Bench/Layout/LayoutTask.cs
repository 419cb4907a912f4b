namespace Laydown.Bench.Layout;

/// <summary>One instance in one variant.</summary>
/// <param name="Family">Its family.</param>
/// <param name="Variant">Such as <c>guillotine, may turn</c>; rows of one variant are summed up together.</param>
/// <param name="Instance">Name of the instance.</param>
/// <param name="Best">Best published value, or null where none is at hand.</param>
/// <param name="BestFrom">What that value is.</param>
/// <param name="Sum">How the rows of a variant are summed up.</param>
/// <param name="Wanted">What is aimed at, in words.</param>
/// <param name="Seconds">Time of its own, s, where the variant is about another time than the one asked for; else null.</param>
/// <param name="Solve">Solves it within a budget and judges the layout with the independent checker.</param>
internal sealed record LayoutTask(
    string Family, string Variant, string Instance, double? Best, string BestFrom, LayoutSum Sum, string Wanted, double? Seconds,
    Func<LayoutBudget, LayoutAnswer> Solve);
