namespace Laydown.Shop.Run;

/// <summary>Writes the papers of a run.</summary>
public interface IRunDocuments
{
    /// <summary>Set-up sheet as one self-contained HTML page (drawings inside, no scripts needed).</summary>
    string SetUpHtml(RunContext context);

    /// <summary>Set-up sheet as A4 PDF.</summary>
    byte[] SetUpPdf(RunContext context);

    /// <summary>Quote of an order as A4 PDF.</summary>
    byte[] QuotePdf(Quote quote);
}
