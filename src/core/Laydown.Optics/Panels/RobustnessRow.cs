namespace Laydown.Optics.Panels;

/// <summary>How far the views move when something is not as planned.</summary>
/// <param name="What">What changes, such as <c>white +10 %</c>.</param>
/// <param name="Day">Change by day.</param>
/// <param name="Night">Change when lit; each lit panel to the eye adapted to it.</param>
public sealed record RobustnessRow(string What, DifferenceSummary Day, DifferenceSummary Night);
