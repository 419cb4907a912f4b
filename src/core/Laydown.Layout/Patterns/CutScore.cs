namespace Laydown.Layout.Patterns;

/// <summary>What a set of patterns is worth: nothing missing first, then cost, then few different layouts.</summary>
internal readonly record struct CutScore(double MissingArea, double Cost, int Layouts)
{
    internal bool IsNoWorseThan(CutScore other) => MissingArea < other.MissingArea || (MissingArea == other.MissingArea && Cost <= other.Cost * (1 + 1e-12));

    internal bool IsBetterThan(CutScore other) => MissingArea != other.MissingArea ? MissingArea < other.MissingArea
        : Math.Abs(Cost - other.Cost) > 1e-12 * Cost ? Cost < other.Cost : Layouts < other.Layouts;
}
