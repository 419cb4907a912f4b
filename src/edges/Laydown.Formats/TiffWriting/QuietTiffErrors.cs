using System.Globalization;
using BitMiracle.LibTiff.Classic;

namespace Laydown.Formats.TiffWriting;

/// <summary>Keeps the TIFF library from printing, and hands its complaints to the stream they belong to.</summary>
internal sealed class QuietTiffErrors : TiffErrorHandler
{
    public override void ErrorHandler(Tiff tif, string method, string format, params object[] args)
    {
    }

    public override void ErrorHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args)
    {
        if (clientData is StreamForTiff stream)
            stream.Complaint = method + ": " + string.Format(CultureInfo.InvariantCulture, format, args);
    }

    public override void WarningHandler(Tiff tif, string method, string format, params object[] args)
    {
    }

    public override void WarningHandlerExt(Tiff tif, object clientData, string method, string format, params object[] args)
    {
    }
}
