namespace Laydown.Formats.TiffWriting;

/// <summary>Numbers of TIFF fields, types and codings that press files use. [TIFF6] [BigTIFF]</summary>
internal static class TiffTags
{
    public const ushort ImageWidth = 256, ImageLength = 257, BitsPerSample = 258, Compression = 259, Photometric = 262, FillOrder = 266,
        ImageDescription = 270, StripOffsets = 273, Orientation = 274, SamplesPerPixel = 277, RowsPerStrip = 278, StripByteCounts = 279,
        XResolution = 282, YResolution = 283, PlanarConfiguration = 284, ResolutionUnit = 296, Software = 305, Predictor = 317,
        TileWidth = 322, InkSet = 332, InkNames = 333, NumberOfInks = 334, SampleFormat = 339, IccProfile = 34675;

    public const ushort Byte = 1, Ascii = 2, Short = 3, Long = 4, Rational = 5, Undefined = 7, Long8 = 16;

    public const int PackedNot = 1, PackedBits = 32773, PackedDeflate = 8, PackedDeflateOld = 32946;

    public const int MinIsWhite = 0, Separated = 5;

    /// <summary>Bytes of one value of a type; 0 for types that press files do not use.</summary>
    public static int SizeOf(ushort type) => type switch
    {
        Byte or Ascii or Undefined => 1,
        Short => 2,
        Long => 4,
        Rational or Long8 => 8,
        _ => 0,
    };

    /// <summary>The code of a packing in the Compression field.</summary>
    public static int CodeOf(DotPacking packing) => packing switch
    {
        DotPacking.PackBits => PackedBits,
        DotPacking.Deflate => PackedDeflate,
        _ => PackedNot,
    };
}
