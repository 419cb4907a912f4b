using Laydown.Layout.Packing;

namespace Laydown.Layout.Contours;

/// <summary>Overlapping layouts that came close to a length, least overlap first.</summary>
internal sealed class BayPool
{
    private readonly List<(float Loss, Pose[] Poses)> layouts = [];

    internal bool IsEmpty => layouts.Count == 0;

    internal void Clear() => layouts.Clear();

    internal void Add(float loss, ReadOnlySpan<Pose> poses)
    {
        int at = layouts.FindIndex(p => p.Loss > loss);
        layouts.Insert(at < 0 ? layouts.Count : at, (loss, poses.ToArray()));
    }

    /// <summary>One of them, rather one with little loss: half a normal curve over their order, a quarter of them its spread. [Gardeyn2025]</summary>
    internal Pose[] Pick(Chance chance)
    {
        double normal = Math.Sqrt(-2 * Math.Log(1 - chance.Share())) * Math.Cos(2 * Math.PI * chance.Share());
        return layouts[Math.Min((int)(Math.Abs(normal) * 0.25 * layouts.Count), layouts.Count - 1)].Poses;
    }
}
