namespace Laydown.Layout.Boards;

/// <summary>Over how many boards the pieces of one set lie.</summary>
/// <param name="Name">The set.</param>
/// <param name="Boards">Boards that carry pieces of it; at least 1.</param>
/// <param name="Least">Boards that its area alone asks for; at least 1. Whether so few can hold it is not said.</param>
public sealed record SetSpread(string Name, int Boards, int Least)
{
    /// <summary>Whether it lies on more boards than its area asks for.</summary>
    public bool IsApart => Boards > Least;

    /// <summary>One sentence.</summary>
    public override string ToString() => IsApart
        ? Invariant($"Set {Name} could not be kept together: it lies on {Boards} boards; by its area {Least} might hold it.")
        : Invariant($"Set {Name} is kept together on {Boards} {(Boards == 1 ? "board" : "boards")}.");
}
