namespace Laydown.Formats.TiffWriting;

/// <summary>What a strip is known by once it is on file.</summary>
/// <param name="Bytes">Its length on file.</param>
/// <param name="Hash">XXH64 [XXH64] of its bytes on file: tells damaged bytes from whole ones, no guard against a forger.</param>
public readonly record struct StripStamp(int Bytes, ulong Hash);
