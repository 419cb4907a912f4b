// Talks with the shop about a layout: one thing after the other, so that no answer overtakes another; searches are followed while they go on.
export class LayoutTalk {
  constructor(api) {
    this.api = api;
    this.last = Promise.resolve();
  }

  // What comes back is { result } or { refused }: words of why not.
  ask(path, body, method = "POST") {
    const asked = this.last.then(() => send(`${this.api}${path}`, body, method));
    this.last = asked.catch(() => {});
    return asked;
  }

  // While dragging only the newest question counts: those that came while one was under way are dropped.
  glance(body, then) {
    this.wanted = { body, then };
    if (this.glancing) return;
    this.glancing = true;
    const next = async () => {
      while (this.wanted) {
        const { body: now, then: tell } = this.wanted;
        this.wanted = null;
        const answer = await this.ask("/edit", now);
        if (!this.wanted) tell(answer);
      }
      this.glancing = false;
    };
    next();
  }
  forget() { this.wanted = null; }

  async search(sheets, found, ended) {
    const begun = await this.ask("/finish", { sheets });
    if (begun.refused) { ended({ ended: begun.refused, found: null, seconds: 0 }); return null; }
    const id = begun.result.search, feed = new EventSource(`/api/layout-searches/${id}`);
    feed.addEventListener("found", (e) => found(JSON.parse(e.data)));
    feed.addEventListener("ended", (e) => { feed.close(); ended(JSON.parse(e.data)); });
    const stop = () => navigator.sendBeacon(`/api/layout-searches/${id}/stop`);
    window.addEventListener("pagehide", () => { feed.close(); stop(); });
    return stop;
  }
}

async function send(address, body, method) {
  try {
    const answer = await fetch(address, method === "GET" ? {} : { method, headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) });
    const said = await answer.json();
    if (answer.ok) return { result: said.result };
    const faults = said.result?.faults ?? [];
    return { refused: faults.length ? faults.slice(0, 4).map((f) => `Found ${f.found}; wanted ${f.wanted}.`).join(" ") : `The shop answered ${answer.status}.` };
  } catch {
    return { refused: "The shop does not answer. Nothing was changed." };
  }
}
