namespace Laydown.Formats.Pdf;

/// <summary>A page asks for more than allowed; caught in this room and told as a fault.</summary>
/// <param name="found">What it asks for.</param>
internal sealed class TooMuchWorkException(string found) : Exception(found);
