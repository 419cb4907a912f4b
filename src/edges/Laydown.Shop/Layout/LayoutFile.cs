namespace Laydown.Shop.Layout;

/// <summary>One file a layout is written as.</summary>
/// <param name="Name">Its name, such as <c>sheet-01.svg</c>.</param>
/// <param name="Format">What it is.</param>
/// <param name="Bytes">What is in it.</param>
public sealed record LayoutFile(string Name, LayoutFormat Format, byte[] Bytes);
