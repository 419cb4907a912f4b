using Laydown.Layout.Panels;
using Laydown.Shop.Run;

namespace Laydown.Output.Documents;

/// <summary>Writes the papers of a run: set-up sheet as page and as A4 PDF, and the quote. Fonts and drawings are inside; the same input gives the same bytes.</summary>
public sealed class RunDocuments : IRunDocuments
{
    /// <inheritdoc/>
    public string SetUpHtml(RunContext context) => Documents.SetUpHtml.Make(SetUpContents.Of(context));

    /// <inheritdoc/>
    public byte[] SetUpPdf(RunContext context) => Documents.SetUpPdf.Make(SetUpContents.Of(context));

    /// <inheritdoc/>
    public byte[] HangingPdf(RunContext context, string itemId, PanelPlan plan) => Documents.HangingPdf.Make(context, itemId, plan);

    /// <inheritdoc/>
    /// <exception cref="ArgumentException">The sums of the quote do not add up to the cent.</exception>
    public byte[] QuotePdf(Quote quote) => Documents.QuotePdf.Make(quote);
}
