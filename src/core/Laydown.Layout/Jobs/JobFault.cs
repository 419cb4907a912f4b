namespace Laydown.Layout.Jobs;

/// <summary>What is wrong with a job or a layout: field, found, wanted.</summary>
/// <param name="Field">Where, as a path such as <c>/pieces/3/quantity</c>.</param>
/// <param name="Found">What is there, with unit.</param>
/// <param name="Wanted">What would do, with unit.</param>
public sealed record JobFault(string Field, string Found, string Wanted);
