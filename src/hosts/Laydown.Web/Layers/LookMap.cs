using Laydown.Shop.Layers;

namespace Laydown.Web.Layers;

/// <summary>A map of a look that can be laid over its picture.</summary>
/// <param name="Name">Short name, as in its address: <c>day</c>, <c>night</c>, <c>ghost</c>, <c>reason</c>.</param>
/// <param name="Words">Its name for people.</param>
/// <param name="Means">What it shows, in a sentence.</param>
/// <param name="Keys">Its colours.</param>
public sealed record LookMap(string Name, string Words, string Means, IReadOnlyList<MapKey> Keys);
