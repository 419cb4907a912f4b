using System.Buffers.Binary;
using BitMiracle.LibTiff.Classic;
using Laydown.Demo.Art;
using SkiaSharp;

namespace Laydown.Demo.Files;

/// <summary>Pictures as image files, with the resolution they claim.</summary>
internal static class ImageFiles
{
    private static readonly uint[] CrcTable = [.. Enumerable.Range(0, 256).Select(n =>
    {
        uint c = (uint)n;
        for (int k = 0; k < 8; k++)
            c = (c & 1) != 0 ? 0xEDB88320 ^ (c >> 1) : c >> 1;
        return c;
    })];

    /// <summary>PNG with alpha and pHYs, without profile.</summary>
    public static void Png(string path, Picture picture, double ppi) => DemoFiles.Write(path, stream =>
    {
        using SKBitmap bitmap = PictureRaster.Draw(picture, ppi, null);
        using SKPixmap pixels = bitmap.PeekPixels();
        using SKData data = pixels.Encode(new SKPngEncoderOptions(SKPngEncoderFilterFlags.Sub, 6)) ?? throw new InvalidOperationException("PNG was not encoded.");
        byte[] png = data.ToArray();

        // Eight bytes of signature and 25 of IHDR; what Skia says about resolution itself is nothing.
        stream.Write(png.AsSpan(0, 33));
        byte[] chunk = new byte[21];
        BinaryPrimitives.WriteUInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk.AsSpan(4));
        uint perMetre = (uint)Math.Round(ppi / 0.0254);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(8), perMetre);
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(12), perMetre);
        chunk[16] = 1;
        BinaryPrimitives.WriteUInt32BigEndian(chunk.AsSpan(17), Crc(chunk.AsSpan(4, 13)));
        stream.Write(chunk);
        stream.Write(png.AsSpan(33));
    });

    /// <summary>JPEG bytes without profile that claim <paramref name="claimedPpi"/>, whatever they were drawn at.</summary>
    public static (byte[] Bytes, int Width, int Height) Jpeg(Picture picture, double ppi, int claimedPpi, int quality)
    {
        using SKBitmap bitmap = PictureRaster.Draw(picture, ppi, null);
        using SKPixmap pixels = bitmap.PeekPixels();
        using SKData data = pixels.Encode(new SKJpegEncoderOptions(quality, SKJpegEncoderDownsample.Downsample444, SKJpegEncoderAlphaOption.Ignore))
            ?? throw new InvalidOperationException("JPEG was not encoded.");
        byte[] jpeg = data.ToArray();
        if (!jpeg.AsSpan(6, 4).SequenceEqual("JFIF"u8))
            throw new InvalidOperationException("JPEG without JFIF header.");
        jpeg[13] = 1;
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(14), (ushort)claimedPpi);
        BinaryPrimitives.WriteUInt16BigEndian(jpeg.AsSpan(16), (ushort)claimedPpi);
        return (jpeg, bitmap.Width, bitmap.Height);
    }

    /// <summary>RGB TIFF with embedded profile.</summary>
    public static void RgbTiff(string path, Picture picture, double ppi, byte[] profile) => DemoFiles.Write(path, stream =>
    {
        using SKBitmap bitmap = PictureRaster.Draw(picture, ppi, null);
        byte[] pixels = bitmap.Bytes;
        using Tiff tiff = Open(stream, bitmap, 3, ppi);
        tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.RGB);
        tiff.SetField(TiffTag.ICCPROFILE, profile.Length, profile);
        WriteRows(tiff, bitmap, pixels, 3, (p, at, row, to) => p.AsSpan(at, 3).CopyTo(row.AsSpan(to)));
    });

    /// <summary>CMYK TIFF without profile, separated with much black on top of the colours: dark parts carry more ink than a roll takes.</summary>
    public static void CmykTiff(string path, Picture picture, double ppi) => DemoFiles.Write(path, stream =>
    {
        using SKBitmap bitmap = PictureRaster.Draw(picture, ppi, null);
        byte[] pixels = bitmap.Bytes;
        using Tiff tiff = Open(stream, bitmap, 4, ppi);
        tiff.SetField(TiffTag.PHOTOMETRIC, Photometric.SEPARATED);
        tiff.SetField(TiffTag.INKSET, InkSet.CMYK);
        WriteRows(tiff, bitmap, pixels, 4, Separate);
    });

    private static void Separate(byte[] pixels, int at, byte[] row, int to)
    {
        int c = 255 - pixels[at];
        int m = 255 - pixels[at + 1];
        int y = 255 - pixels[at + 2];
        int grey = Math.Min(c, Math.Min(m, y));
        int k = Math.Max(0, (grey - 70) * 255 / 185);
        (row[to], row[to + 1], row[to + 2], row[to + 3]) = ((byte)c, (byte)m, (byte)y, (byte)k);
    }

    private static Tiff Open(Stream stream, SKBitmap bitmap, int samples, double ppi)
    {
        Tiff tiff = Tiff.ClientOpen("demo", "w", stream, new KeepOpen()) ?? throw new InvalidOperationException("TIFF was not opened.");
        tiff.SetField(TiffTag.IMAGEWIDTH, bitmap.Width);
        tiff.SetField(TiffTag.IMAGELENGTH, bitmap.Height);
        tiff.SetField(TiffTag.SAMPLESPERPIXEL, samples);
        tiff.SetField(TiffTag.BITSPERSAMPLE, 8);
        tiff.SetField(TiffTag.PLANARCONFIG, PlanarConfig.CONTIG);
        tiff.SetField(TiffTag.COMPRESSION, Compression.ADOBE_DEFLATE);
        tiff.SetField(TiffTag.PREDICTOR, Predictor.HORIZONTAL);
        tiff.SetField(TiffTag.ROWSPERSTRIP, 32);
        tiff.SetField(TiffTag.XRESOLUTION, ppi);
        tiff.SetField(TiffTag.YRESOLUTION, ppi);
        tiff.SetField(TiffTag.RESOLUTIONUNIT, ResUnit.INCH);
        tiff.SetField(TiffTag.ORIENTATION, Orientation.TOPLEFT);
        return tiff;
    }

    private static void WriteRows(Tiff tiff, SKBitmap bitmap, byte[] pixels, int samples, Action<byte[], int, byte[], int> convert)
    {
        byte[] row = new byte[bitmap.Width * samples];
        for (int y = 0; y < bitmap.Height; y++)
        {
            for (int x = 0; x < bitmap.Width; x++)
                convert(pixels, (y * bitmap.RowBytes) + (4 * x), row, x * samples);
            if (!tiff.WriteScanline(row, y))
                throw new IOException("TIFF: a row was not written.");
        }
    }

    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        uint c = 0xFFFFFFFF;
        foreach (byte b in bytes)
            c = CrcTable[(c ^ b) & 0xFF] ^ (c >> 8);
        return c ^ 0xFFFFFFFF;
    }

    /// <summary>The file is closed by who opened it.</summary>
    private sealed class KeepOpen : TiffStream
    {
        public override void Close(object clientData)
        {
        }
    }
}
