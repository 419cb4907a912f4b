namespace Laydown.Formats.Pdf;

/// <summary>A page asks for more drawing operations than allowed; caught in this room and told as a fault.</summary>
internal sealed class TooMuchWorkException : Exception;
