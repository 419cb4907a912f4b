using Laydown.Measures;

namespace Laydown.Shop.Layers;

/// <summary>What is seen at the spots of a list.</summary>
/// <param name="Columns">Names of the coverages, such as <c>1 Cyan</c>: layer from 1 in print order, then the ink.</param>
/// <param name="Day">Light by day.</param>
/// <param name="Night">Light with the lamp on.</param>
/// <param name="Generic">Whether an ink rests on no reading of its own.</param>
/// <param name="Findings">What is missing for which ink.</param>
/// <param name="Spots">The spots.</param>
public sealed record SpotLooks(
    IReadOnlyList<string> Columns, LookScene Day, LookScene Night, bool Generic, IReadOnlyList<Finding> Findings, IReadOnlyList<SpotLook> Spots);
