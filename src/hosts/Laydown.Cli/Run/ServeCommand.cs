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
                string wanted = parsed.GetRequiredValue(url);
                try
                {
                    await Web.WebShop.ServeAsync(shop, wanted, address => Say(shop, answer, address), cancellation);
                    return ExitCodes.Done;
                }
                catch (ArgumentException fault) when (fault.ParamName == "url")
                {
                    return answer.Fail(ExitCodes.BadUsage, "--url: " + fault.Message.Split(" (Parameter")[0], []);
                }
                catch (IOException)
                {
                    return answer.Fail(ExitCodes.Refused, Invariant($"--url: found {wanted} taken by another program, or not to be had; wanted a free address, such as http://127.0.0.1:0 for any free port."), []);
                }
            },
            cancellation));
        return command;
    }

    private static void Say(Laydown.Shop.ShopServices shop, Words.Answer answer, string address)
    {
        if (answer.AsJson)
            answer.Json("serve", new { url = address, shop.Folder });
        else
            answer.Line(Invariant($"{shop.Catalogue.ShopName} is open at {address} (Ctrl-C closes it)."));
    }
}
