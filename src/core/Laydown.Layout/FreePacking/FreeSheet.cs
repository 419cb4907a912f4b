namespace Laydown.Layout.FreePacking;

/// <summary>A filled sheet, and how often exactly this is wanted.</summary>
internal sealed record FreeSheet(FreeBoard Board, int Repeats);
