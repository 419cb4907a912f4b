using Laydown.Formats.Json;
using Laydown.Measures;
using Laydown.Plan.Orders;
using Laydown.Shop.Orders;

namespace Laydown.Intake.Orders;

/// <summary>Reads order files and checks what a schema cannot say.</summary>
public sealed class OrderReader : IOrderReader
{
    /// <inheritdoc/>
    public Reading<Order> Read(string path) => LaydownJson.ReadFile<Order>(path).Then(order => Check(Path.GetFileName(path), order));

    private static Reading<Order> Check(string file, Order order)
    {
        List<InputFault> faults = [];
        HashSet<string> ids = new(StringComparer.Ordinal);
        foreach ((int index, Item item) in order.Items.Index())
        {
            string path = Invariant($"/items/{index}");
            if (!ids.Add(item.Id))
                faults.Add(new(file, null, path + "/id", item.Id, "an id that no other item of the order has"));
            if (item.Due < order.Received)
                faults.Add(new(file, null, path + "/due", Invariant($"{item.Due:yyyy-MM-dd}"), Invariant($"a day not before {order.Received:yyyy-MM-dd}, when the order came")));
            if (item.Build.White == Laydown.Press.Stacks.WhiteSource.NamedSeparation && string.IsNullOrWhiteSpace(item.Build.WhiteSeparation))
                faults.Add(new(file, null, path + "/build/whiteSeparation", "nothing", "the name of the separation that holds the white"));
            if (item.Build.BlockOut == Laydown.Press.Stacks.WhiteSource.NamedSeparation && string.IsNullOrWhiteSpace(item.Build.BlockOutSeparation))
                faults.Add(new(file, null, path + "/build/blockOutSeparation", "nothing", "the name of the separation that holds the block-out"));
            if (item.Build.White is not null && item.Build.WhitePercent <= 0)
                faults.Add(new(file, null, path + "/build/whitePercent", Invariant($"{item.Build.WhitePercent}"), "over 0, as white is wanted"));
        }

        return faults.Count == 0 ? Reading.Of(order) : Reading.Refused<Order>(faults);
    }
}
