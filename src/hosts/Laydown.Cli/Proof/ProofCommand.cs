using System.CommandLine;
using Laydown.Cli.Words;
using Laydown.Measures;
using Laydown.Shop;
using Laydown.Shop.Proof;

namespace Laydown.Cli.Proof;

/// <summary><c>laydown proof link|list|revoke</c>: links by which customers see and answer a look.</summary>
internal static class ProofCommand
{
    public static Command Make(Shared shared) => new("proof", "Links by which customers see a look and answer it.") { Link(shared), List(shared), Revoke(shared) };

    private static Command Link(Shared shared)
    {
        Argument<string> item = new("item") { Description = "Id of the item." };
        Argument<string> look = new("look") { Description = "Id of its look, such as L-1." };
        Option<int> days = new("--days") { Description = "Days until the link ends.", DefaultValueFactory = _ => 14 };
        Option<string> who = new("--for") { Description = "Whom it is for, for the shop's own list.", DefaultValueFactory = _ => "" };
        Option<string> address = new("--address") { Description = "Address the page is served at.", DefaultValueFactory = _ => "http://127.0.0.1:5080" };
        Command command = new("link", "Makes a link to a look.") { item, look, days, who, address };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) => Tell(
                answer,
                await shop.Proof.MakeLink.MakeAsync(
                    parsed.GetRequiredValue(item), parsed.GetRequiredValue(look), parsed.GetValue(days), parsed.GetValue(who) ?? "", cancellation),
                (parsed.GetValue(address) ?? "").TrimEnd('/')),
            cancellation));
        return command;
    }

    private static Command List(Shared shared)
    {
        Argument<string?> item = new("item") { Description = "Id of an item; all items without.", Arity = ArgumentArity.ZeroOrOne };
        Command command = new("list", "Lists links and what was answered.") { item };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed, (shop, answer) => ListAsync(shop, answer, parsed.GetValue(item), shared.Now(parsed), cancellation), cancellation));
        return command;
    }

    private static Command Revoke(Shared shared)
    {
        Argument<string> id = new("id") { Description = "Id of the link." };
        Command command = new("revoke", "Withdraws a link: from then on it shows nothing.") { id };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                Reading<ProofLink> gone = await shop.Proof.RevokeLink.RevokeAsync(parsed.GetRequiredValue(id), cancellation);
                if (!gone.IsTaken)
                    return answer.Fail(ExitCodes.Refused, "No link was withdrawn.", gone.Faults);
                if (answer.AsJson)
                    answer.Json("proof-link", gone.Value);
                else
                    answer.Line(Invariant($"Link {gone.Value.Id} to {gone.Value.ItemId} {gone.Value.LookId} shows nothing any more."));
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }

    private static int Tell(Answer answer, Reading<SentLink> made, string address)
    {
        if (!made.IsTaken)
            return answer.Fail(ExitCodes.Refused, "No link was made.", made.Faults);
        string url = address + made.Value.Path;
        if (answer.AsJson)
            answer.Json("proof-link", new { made.Value.Link, made.Value.Token, url });
        else
        {
            answer.Line(Invariant($"Link {made.Value.Link.Id} to {made.Value.Link.ItemId} {made.Value.Link.LookId}, until {made.Value.Link.Expires:yyyy-MM-dd HH:mm} UTC:"));
            answer.Line(url);
        }

        return ExitCodes.Done;
    }

    private static async Task<int> ListAsync(ShopServices shop, Answer answer, string? item, DateTimeOffset now, CancellationToken cancellation)
    {
        IReadOnlyList<SentLink> links = await shop.Proof.ListLinks.ListAsync(item, cancellation);
        List<ProofAnswer> answers = [];
        foreach (string id in links.Select(l => l.Link.ItemId).Distinct(StringComparer.Ordinal))
            answers.AddRange((await shop.Proof.Answers.ShowAsync(id, cancellation)).All);
        if (answer.AsJson)
        {
            answer.Json("proof-links", new { links = links.Select(l => new { l.Link, l.Path, state = l.Link.StateAt(now) }), answers });
            return ExitCodes.Done;
        }

        answer.Table(["link", "item", "look", "state", "until", "answers", "for"], links.Select(l => (IReadOnlyList<string>)
        [
            l.Link.Id, l.Link.ItemId, l.Link.LookId, Word(l.Link.StateAt(now)), Invariant($"{l.Link.Expires:yyyy-MM-dd}"),
            Invariant($"{answers.Count(a => a.LinkId == l.Link.Id)}"), l.Link.For,
        ]));
        answer.Table(["item", "look", "when", "says", "where", "done", "name", "comment"], answers.Select(a => (IReadOnlyList<string>)
        [
            a.ItemId, a.LookId, Invariant($"{a.At:yyyy-MM-dd HH:mm}"), a.Verdict == ProofVerdict.Approved ? "approved" : "change",
            a.Pin is null ? "" : Invariant($"{a.Pin.XMm:0} × {a.Pin.YMm:0} mm by {(a.Pin.View == PinView.Day ? "day" : "night")}"), a.Done ? "done" : "open", a.From,
            a.Text.Replace('\n', ' '),
        ]));
        if (links.Count == 0)
            answer.Line("No links.");
        return ExitCodes.Done;
    }

    private static string Word(ProofLinkState state) => state switch
    {
        ProofLinkState.Open => "open",
        ProofLinkState.Expired => "over",
        _ => "withdrawn",
    };
}
