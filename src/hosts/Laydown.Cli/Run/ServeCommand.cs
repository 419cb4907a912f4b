using System.CommandLine;

namespace Laydown.Cli.Run;

/// <summary><c>laydown serve</c>: the web page.</summary>
internal static class ServeCommand
{
    public static Command Make(Shared shared)
    {
        Option<string> url = new("--url") { Description = "Address to listen on.", DefaultValueFactory = _ => "http://127.0.0.1:5080" };
        Command command = new("serve", "Serves the web page of the shop.") { url };
        command.SetAction((parsed, cancellation) => shared.InShopAsync(
            parsed,
            async (shop, answer) =>
            {
                string address = parsed.GetRequiredValue(url);
                if (answer.AsJson)
                    answer.Json("serve", new { url = address, shop.Folder });
                else
                    answer.Line(Invariant($"{shop.Catalogue.ShopName} is open at {address} (Ctrl-C closes it)."));
                await Web.WebShop.ServeAsync(shop, address, cancellation);
                return ExitCodes.Done;
            },
            cancellation));
        return command;
    }
}
