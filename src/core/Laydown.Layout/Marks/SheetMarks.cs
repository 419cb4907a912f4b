namespace Laydown.Layout.Marks;

/// <summary>Marks of a sheet.</summary>
/// <param name="Marks">What is printed.</param>
/// <param name="LeftOut">What was wanted and found no room, in words for the operator.</param>
public sealed record SheetMarks(IReadOnlyList<SheetMark> Marks, IReadOnlyList<string> LeftOut)
{
    /// <summary>No marks.</summary>
    public static SheetMarks None { get; } = new([], []);
}
