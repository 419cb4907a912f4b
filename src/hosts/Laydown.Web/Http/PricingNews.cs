using System.Net.ServerSentEvents;
using System.Runtime.CompilerServices;
using System.Text.Json;
using System.Threading.Channels;
using Laydown.Shop;
using Laydown.Shop.Run;

namespace Laydown.Web.Http;

/// <summary>Pricing of an order as server-sent events: <c>pricing</c> before each price is reckoned, then the answer under the name of its schema.</summary>
internal static class PricingNews
{
    /// <summary>The events; whoever stops listening ends the work, and nothing goes on after it.</summary>
    /// <param name="work">Prices, tells how far it is, and gives the name and the result of the answer.</param>
    /// <param name="cancellation">The listener has gone.</param>
    public static async IAsyncEnumerable<SseItem<JsonElement>> FeedAsync(
        Func<IProgress<PricedStep>, CancellationToken, Task<(string Schema, object Result)>> work, [EnumeratorCancellation] CancellationToken cancellation)
    {
        using CancellationTokenSource gone = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        var steps = Channel.CreateUnbounded<PricedStep>();
        Task<(string Schema, object Result)> answer = Task.Run(() => WorkAsync(work, steps.Writer, gone.Token), CancellationToken.None);
        try
        {
            await foreach (PricedStep step in steps.Reader.ReadAllAsync(cancellation))
                yield return new(JsonSerializer.SerializeToElement(step, ShopJson.Compact), "pricing");
            (string schema, object result) = await answer;
            yield return new(ShopInterface.Told(schema, result), schema);
        }
        finally
        {
            await gone.CancelAsync();
            await Task.WhenAny(answer);
        }
    }

    private static async Task<(string Schema, object Result)> WorkAsync(
        Func<IProgress<PricedStep>, CancellationToken, Task<(string Schema, object Result)>> work, ChannelWriter<PricedStep> steps, CancellationToken cancellation)
    {
        try
        {
            return await work(new Told(steps), cancellation);
        }
        finally
        {
            steps.Complete();
        }
    }

    private sealed class Told(ChannelWriter<PricedStep> steps) : IProgress<PricedStep>
    {
        public void Report(PricedStep value) => steps.TryWrite(value);
    }
}
