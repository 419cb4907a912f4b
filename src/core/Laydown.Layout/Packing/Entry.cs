namespace Laydown.Layout.Packing;

/// <summary>One step of an order of packing: so many copies of a type, one after the other.</summary>
internal readonly record struct Entry(int Type, int Copies);
