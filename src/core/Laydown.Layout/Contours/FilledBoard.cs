namespace Laydown.Layout.Contours;

/// <summary>A board with its items, poses from its lower left corner.</summary>
internal sealed record FilledBoard(BoardKind Kind, IReadOnlyList<(int Item, Pose Pose)> Items);
