using Laydown.Shop.Layers;

namespace Laydown.Shop.Proof;

/// <summary>What the shop can do with customer proofs.</summary>
/// <param name="MakeLink">Makes links.</param>
/// <param name="ListLinks">Lists them.</param>
/// <param name="RevokeLink">Withdraws one.</param>
/// <param name="Open">Follows a token.</param>
/// <param name="Answer">Takes an answer in.</param>
/// <param name="Answers">Shows answers.</param>
/// <param name="Settle">Marks an answer as dealt with.</param>
/// <param name="Planes">Finds ink planes.</param>
/// <param name="Tiles">Light of looks for screens.</param>
/// <param name="Point">What is at one place of a look.</param>
/// <param name="Preview">How a pair would look, quickly.</param>
public sealed record ProofServices(
    MakeProofLink MakeLink,
    ListProofLinks ListLinks,
    RevokeProofLink RevokeLink,
    OpenProof Open,
    AnswerProof Answer,
    ShowAnswers Answers,
    SettleAnswer Settle,
    ProofPlanes Planes,
    LookTiles Tiles,
    PickPoint Point,
    PreviewPanel Preview)
{
    /// <summary>All of it for one shop.</summary>
    /// <param name="folder">The shop's folder.</param>
    /// <param name="layers">Its looks.</param>
    /// <param name="preview">Draws previews.</param>
    /// <param name="store">Links and answers.</param>
    /// <param name="clock">Tells the time.</param>
    public static ProofServices Of(ShopFolder folder, LayerServices layers, PreviewPanel preview, IProofStore store, TimeProvider clock)
    {
        ProofKey key = new(folder);
        ProofPlanes planes = new(folder);
        OpenProof open = new(key, store, clock);
        return new(
            new(key, store, planes, clock), new(key, store), new(store, clock), open, new(open, store, planes, clock), new(store, planes), new(store), planes,
            new(layers.LookLights, new(folder)), new(layers.LookLights), preview);
    }
}
