namespace Laydown.Artwork.Checks;

/// <summary>Where the limits of the checks come from; keys into docs/sources.md.</summary>
internal static class Sources
{
    /// <summary>Handed down in the trade.</summary>
    internal const string Practice = "common practice, no source";

    /// <summary>Not looked up.</summary>
    internal const string Memory = "from memory";

    /// <summary>A stroke of one arc minute, a letter of five: [Howett1983].</summary>
    internal const string Acuity = "Howett1983";

    /// <summary>Limits of a page: [PDFReference16].</summary>
    internal const string Pdf = "PDFReference16";

    /// <summary>Sizes and quiet zones of codes: [GS1GenSpecs].</summary>
    internal const string Codes = "GS1GenSpecs";

    /// <summary>Groups and types of processing steps: [ISO19593-1].</summary>
    internal const string Steps = "ISO19593-1";
}
