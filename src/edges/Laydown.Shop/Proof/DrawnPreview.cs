namespace Laydown.Shop.Proof;

/// <summary>A preview with its bytes.</summary>
/// <param name="Size">What the bytes are.</param>
/// <param name="Light">The bytes.</param>
public sealed record DrawnPreview(PreviewSize Size, byte[] Light);
