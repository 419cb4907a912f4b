using System.Reflection;
using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace Laydown.Formats.Icc;

/// <summary>The functions of Little CMS 2 that the product calls; the library comes with the system.</summary>
internal static partial class LittleCms
{
    internal const uint NoCache = 0x0040;
    internal const uint BlackPointCompensation = 0x2000;
    internal const uint FineTable = 0x0400;
    internal const uint NoOptimization = 0x0100;
    internal const uint InfoDescription = 0;

    private const string Library = "lcms2";

    /// <summary>Whether the library is there.</summary>
    internal static bool IsPresent => Resolve(Library, typeof(LittleCms).Assembly, null) != 0;

    /// <summary>Maps the name to the file that Debian installs; called once before the first use.</summary>
    [ModuleInitializer]
    [System.Diagnostics.CodeAnalysis.SuppressMessage("Usage", "CA2255", Justification = "The resolver must stand before the first native call.")]
    internal static void Register() => NativeLibrary.SetDllImportResolver(typeof(LittleCms).Assembly, Resolve);

    private static nint Resolve(string name, Assembly assembly, DllImportSearchPath? path) =>
        !string.Equals(name, Library, StringComparison.Ordinal) ? 0
        : NativeLibrary.TryLoad("liblcms2.so.2", assembly, path, out nint handle) ? handle
        : NativeLibrary.TryLoad("lcms2", assembly, path, out handle) ? handle : 0;

    [LibraryImport(Library, EntryPoint = "cmsCreateContext")]
    internal static partial nint CreateContext(nint plugin, nint userData);

    [LibraryImport(Library, EntryPoint = "cmsDeleteContext")]
    internal static partial void DeleteContext(nint context);

    [LibraryImport(Library, EntryPoint = "cmsGetContextUserData")]
    internal static partial nint GetContextUserData(nint context);

    [LibraryImport(Library, EntryPoint = "cmsSetLogErrorHandlerTHR")]
    internal static unsafe partial void SetLogErrorHandler(nint context, delegate* unmanaged<nint, uint, byte*, void> handler);

    [LibraryImport(Library, EntryPoint = "cmsOpenProfileFromMemTHR")]
    internal static partial nint OpenProfile(nint context, ReadOnlySpan<byte> bytes, uint size);

    [LibraryImport(Library, EntryPoint = "cmsCloseProfile")]
    internal static partial int CloseProfile(nint profile);

    [LibraryImport(Library, EntryPoint = "cmsGetDeviceClass")]
    internal static partial uint GetDeviceClass(nint profile);

    [LibraryImport(Library, EntryPoint = "cmsGetColorSpace")]
    internal static partial uint GetColorSpace(nint profile);

    [LibraryImport(Library, EntryPoint = "cmsGetPCS")]
    internal static partial uint GetPcs(nint profile);

    [LibraryImport(Library, EntryPoint = "cmsGetProfileVersion")]
    internal static partial double GetProfileVersion(nint profile);

    [LibraryImport(Library, EntryPoint = "cmsGetProfileInfo")]
    internal static unsafe partial uint GetProfileInfo(nint profile, uint info, byte* language, byte* country, uint* buffer, uint bufferBytes);

    [LibraryImport(Library, EntryPoint = "cmsCreate_sRGBProfileTHR")]
    internal static partial nint CreateSrgb(nint context);

    [LibraryImport(Library, EntryPoint = "cmsCreateLab4ProfileTHR")]
    internal static partial nint CreateLab4(nint context, nint whitePoint);

    [LibraryImport(Library, EntryPoint = "cmsCreateTransformTHR")]
    internal static partial nint CreateTransform(
        nint context, nint input, uint inputFormat, nint output, uint outputFormat, uint intent, uint flags);

    [LibraryImport(Library, EntryPoint = "cmsDoTransform")]
    internal static partial void DoTransform(nint transform, ReadOnlySpan<byte> input, Span<byte> output, uint pixels);

    [LibraryImport(Library, EntryPoint = "cmsDeleteTransform")]
    internal static partial void DeleteTransform(nint transform);

    [LibraryImport(Library, EntryPoint = "cmsSaveProfileToMem")]
    internal static partial int SaveProfile(nint profile, Span<byte> bytes, ref uint size);

    [LibraryImport(Library, EntryPoint = "cmsCreateProfilePlaceholder")]
    internal static partial nint CreatePlaceholder(nint context);

    [LibraryImport(Library, EntryPoint = "cmsSetProfileVersion")]
    internal static partial void SetProfileVersion(nint profile, double version);

    [LibraryImport(Library, EntryPoint = "cmsSetDeviceClass")]
    internal static partial void SetDeviceClass(nint profile, uint signature);

    [LibraryImport(Library, EntryPoint = "cmsSetColorSpace")]
    internal static partial void SetColorSpace(nint profile, uint signature);

    [LibraryImport(Library, EntryPoint = "cmsSetPCS")]
    internal static partial void SetPcs(nint profile, uint signature);

    [LibraryImport(Library, EntryPoint = "cmsWriteTag")]
    internal static partial int WriteTag(nint profile, uint signature, nint data);

    [LibraryImport(Library, EntryPoint = "cmsWriteTag")]
    internal static partial int WriteXyzTag(nint profile, uint signature, ReadOnlySpan<double> xyz);

    [LibraryImport(Library, EntryPoint = "cmsWriteRawTag")]
    internal static partial int WriteRawTag(nint profile, uint signature, ReadOnlySpan<byte> data, uint size);

    [LibraryImport(Library, EntryPoint = "cmsLinkTag")]
    internal static partial int LinkTag(nint profile, uint signature, uint target);

    [LibraryImport(Library, EntryPoint = "cmsMLUalloc")]
    internal static partial nint AllocText(nint context, uint items);

    [LibraryImport(Library, EntryPoint = "cmsMLUsetASCII")]
    internal static unsafe partial int SetText(nint text, byte* language, byte* country, ReadOnlySpan<byte> ascii);

    [LibraryImport(Library, EntryPoint = "cmsMLUfree")]
    internal static partial void FreeText(nint text);

    [LibraryImport(Library, EntryPoint = "cmsPipelineAlloc")]
    internal static partial nint AllocPipeline(nint context, uint inputs, uint outputs);

    [LibraryImport(Library, EntryPoint = "cmsPipelineFree")]
    internal static partial void FreePipeline(nint pipeline);

    [LibraryImport(Library, EntryPoint = "cmsPipelineInsertStage")]
    internal static partial int InsertStage(nint pipeline, int place, nint stage);

    [LibraryImport(Library, EntryPoint = "cmsStageAllocToneCurves")]
    internal static partial nint AllocCurves(nint context, uint channels, ReadOnlySpan<nint> curves);

    [LibraryImport(Library, EntryPoint = "cmsStageAllocCLut16bit")]
    internal static partial nint AllocTable(nint context, uint steps, uint inputs, uint outputs, ReadOnlySpan<ushort> table);

    [LibraryImport(Library, EntryPoint = "cmsBuildTabulatedToneCurve16")]
    internal static partial nint BuildCurve(nint context, uint entries, ReadOnlySpan<ushort> values);

    [LibraryImport(Library, EntryPoint = "cmsFreeToneCurve")]
    internal static partial void FreeCurve(nint curve);
}
