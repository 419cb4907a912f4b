namespace Laydown.Layout.Patterns;

/// <summary>A pattern, cut so many times.</summary>
internal readonly record struct CutUse(CutPattern Pattern, int Times);
