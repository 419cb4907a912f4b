using Laydown.Layout.Panels;

namespace Laydown.Shop.Run;

/// <summary>Writes the papers of a run.</summary>
public interface IRunDocuments
{
    /// <summary>Set-up sheet as one self-contained HTML page (drawings inside, no scripts needed).</summary>
    string SetUpHtml(RunContext context);

    /// <summary>Set-up sheet as A4 PDF.</summary>
    byte[] SetUpPdf(RunContext context);

    /// <summary>Hanging plan of an item in panels as A4 PDF.</summary>
    /// <param name="context">The run.</param>
    /// <param name="itemId">The item.</param>
    /// <param name="plan">Its panels.</param>
    byte[] HangingPdf(RunContext context, string itemId, PanelPlan plan);

    /// <summary>Quote of an order as A4 PDF.</summary>
    byte[] QuotePdf(Quote quote);
}
