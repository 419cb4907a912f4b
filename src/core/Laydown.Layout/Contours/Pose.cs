namespace Laydown.Layout.Contours;

/// <summary>Where a form lies: which bay, which of its angles, where its centre is.</summary>
internal readonly record struct Pose(int Bay, int Angle, float X, float Y);
