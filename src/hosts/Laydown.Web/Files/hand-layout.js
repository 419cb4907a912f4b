// A layout under a person's hands: choose, move, turn, lock, pull to another board, finish the rest, undo, save. What is right or wrong is judged by the shop.
import { drawSheet, roomiest, say, shared, View } from "./layout-draw.js";
import { LayoutTalk } from "./layout-talk.js";
import { LayoutPointer } from "./layout-pointer.js";

const TOGETHER_MS = 1500, MOST_UNDO = 200;
const number = (v, digits) => v.toFixed(digits).replace("-", "−");
const make = (name, attributes = {}, ...inside) => {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) if (value !== null) made.setAttribute(key, value);
  made.append(...inside);
  return made;
};

const when = (at) => new Date(at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });

class HandLayout {
  constructor(root) {
    this.root = root;
    this.find = (name) => root.querySelector(`[data-${name}]`);
    this.bench = this.find("bench");
    this.talk = new LayoutTalk(root.dataset.api);
    this.take(JSON.parse(root.dataset.json));
    root.append(shared(this.pieces));
    this.past = [{ sheets: this.layout.sheets, report: this.layout.report, told: "" }];
    [this.at, this.sheet, this.spot, this.zoom, this.clearances, this.trial] = [0, 0, -1, 1, [], null];
    this.pointer = new LayoutPointer(this);
    root.hidden = false;
    this.wire();
    this.draw();
    this.tell(`${this.size(this.report)}, ${this.report.pieces} pieces drawn. ${this.wrongWords()}`);
    this.price();
    root.dataset.live = "true";
  }

  // A layout as the shop sends it, the one that is saved.
  take(layout) {
    this.layout = layout;
    this.pieces = new Map(layout.pieces.map((p, i) => [p.id, { ...p, room: p.rings ? roomiest(p.rings) : null, symbol: `hl-picture-${i}`, picture: `/items/${encodeURIComponent(p.id.split("/")[0])}/pages/1.png` }]));
  }
  get now() { return this.trial ?? this.past[this.at]; }
  get report() { return this.now.report; }
  get here() { return this.report.sheets[this.sheet]; }
  get piece() { return this.here?.spots[this.spot]; }
  get free() { return !this.trial; }
  get held() { return Boolean(this.layout.released); }
  sheetWord(i) { return this.layout.isRoll ? "the roll" : `board ${i + 1}`; }

  wire() {
    for (const button of this.root.querySelectorAll("[data-do]")) button.addEventListener("click", () => this.does(button.dataset.do));
    for (const button of this.root.querySelectorAll("[data-step]")) {
      const [right, up] = button.dataset.step.split(" ").map(Number);
      button.addEventListener("click", () => this.nudge(right, up, parseFloat(this.find("by").value)));
    }
    for (const button of this.root.querySelectorAll("[data-zoom]")) button.addEventListener("click", () => this.enlarge(Number(button.dataset.zoom)));
    for (const box of this.root.querySelectorAll("[data-show]")) box.addEventListener("change", () => this.draw());
    this.find("slip").addEventListener("submit", (e) => { e.preventDefault(); this.layThere(); });
    this.find("piece").addEventListener("change", (e) => this.look(this.sheet, Number(e.target.value)));
    this.find("to")?.addEventListener("change", (e) => this.pull(Number(e.target.value)));
    this.bench.addEventListener("keydown", (e) => this.key(e));
    this.root.addEventListener("keydown", (e) => { if (!/^(INPUT|SELECT)$/.test(e.target.tagName)) this.undoKey(e); });
    window.addEventListener("beforeunload", (e) => { if (this.at > 0 && !this.saved) e.preventDefault(); });
    let width = 0;
    new ResizeObserver(() => { const wide = this.find("plate").clientWidth; if (wide !== width) { width = wide; this.drawBench(); } }).observe(this.find("plate"));
  }

  does(what) {
    const acts = {
      undo: () => this.step(-1), redo: () => this.step(1), back: () => this.backToSaved(), save: () => this.save(), finish: () => this.finish(),
      release: () => this.release("/release"), takeBack: () => this.release("/take-back"),
      take: () => this.takeTrial(), stop: () => this.stopSearch?.(), leave: () => this.leaveTrial(), lock: () => this.edit({ verb: this.piece?.locked ? "unlock" : "lock" }),
    };
    if (acts[what]) acts[what]();
    else this.edit({ verb: what });
  }

  // Does one thing to the layout. Steps that belong together are undone together.
  async edit(edit, { together = null } = {}) {
    if (!this.free) return this.tell("Take the layout that was found, or put it back, first.");
    if (this.held && edit.verb !== "look") return this.tell(`Nothing was changed. ${this.layout.release.by} released this layout; take the release back before it is changed.`);
    const aboutPiece = ["move", "turn", "lock", "unlock", "pull", "takeOff"].includes(edit.verb);
    if (aboutPiece && !(edit.spot >= 0) && this.spot < 0) return this.tell("Take a piece first.");
    const body = { sheets: this.now.sheets, edit: { sheet: this.sheet, spot: this.spot, ...edit } };
    const answer = await this.talk.ask("/edit", body);
    if (answer.refused) { this.draw(); return this.tell(answer.refused); }
    const { done, clearances, told, report } = answer.result;
    if (edit.verb !== "look") this.push({ sheets: done.sheets, report, told }, together);
    else this.past[this.at].report = report;
    [this.sheet, this.spot, this.clearances] = [done.sheet, done.spot, clearances];
    this.draw();
    return this.tell(told);
  }
  push(state, together) {
    const join = together && this.joined?.key === together && performance.now() - this.joined.at < TOGETHER_MS;
    this.past.length = join ? this.at : this.at + 1;
    this.past.push(state);
    if (this.past.length > MOST_UNDO) this.past.shift();
    this.at = this.past.length - 1;
    this.joined = together ? { key: together, at: performance.now() } : null;
    this.saved = false;
  }
  step(by) {
    if (!this.free || this.at + by < 0 || this.at + by >= this.past.length) return this.tell(by < 0 ? "Nothing to undo." : "Nothing to do again.");
    this.at += by;
    this.joined = null;
    this.saved = false;
    this.sheet = Math.min(this.sheet, this.report.sheets.length - 1);
    this.spot = this.spot < (this.here?.spots.length ?? 0) ? this.spot : -1;
    return this.edit({ verb: "look" }).then(() => this.tell(by < 0 ? `Undone. ${this.wrongWords()}` : `Done again. ${this.wrongWords()}`));
  }
  backToSaved() {
    if (!this.free) return;
    this.push({ sheets: this.layout.sheets, report: this.layout.report, told: "" });
    [this.sheet, this.spot, this.clearances] = [0, -1, []];
    this.draw();
    this.tell("As it was saved.");
  }
  look(sheet, spot) { return this.edit({ verb: "look", sheet, spot }); }
  nudge(right, up, mm) {
    if (!this.piece) return this.tell("Take a piece first.");
    const [dx, dy] = this.view.step(right * mm, up * mm);
    return this.edit({ verb: "move", xMm: this.piece.xMm + dx, yMm: this.piece.yMm + dy }, { together: `nudge ${this.sheet} ${this.spot}` });
  }
  layThere() {
    const [x, y] = [this.find("x"), this.find("y")].map((field) => parseFloat(field.value));
    if (Number.isFinite(x) && Number.isFinite(y)) this.edit({ verb: "move", xMm: x, yMm: y });
    else this.tell("Found no number; wanted millimetres from the left and from below.");
  }
  pull(to, place = {}) {
    if (to === this.sheet || to < 0 || to >= this.report.sheets.length) return this.look(this.sheet, this.spot);
    return this.edit({ verb: "pull", to, ...place });
  }

  key(event) {
    if (event.ctrlKey || event.metaKey) return;
    const steps = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    const mm = event.shiftKey ? 10 : event.altKey ? 0.1 : 1, count = this.here?.spots.length ?? 0;
    const acts = {
      n: () => count && this.look(this.sheet, (this.spot + 1) % count), p: () => count && this.look(this.sheet, (this.spot <= 0 ? count : this.spot) - 1),
      r: () => this.edit({ verb: "turn" }), l: () => this.does("lock"), f: () => this.does("finish"), delete: () => this.edit({ verb: "takeOff" }), backspace: () => this.edit({ verb: "takeOff" }),
      pagedown: () => this.toBoard(1, event.shiftKey), pageup: () => this.toBoard(-1, event.shiftKey), escape: () => this.letGo(),
    };
    const act = steps ? () => this.nudge(...steps, mm) : acts[event.key.toLowerCase()];
    if (!act) return;
    event.preventDefault();
    act();
  }
  undoKey(event) {
    if (!(event.ctrlKey || event.metaKey)) return;
    const again = event.key.toLowerCase() === "y" || (event.key.toLowerCase() === "z" && event.shiftKey);
    if (!again && event.key.toLowerCase() !== "z") return;
    event.preventDefault();
    this.step(again ? 1 : -1);
  }
  toBoard(by, along) {
    const to = this.sheet + by;
    if (to < 0 || to >= this.report.sheets.length) return this.tell(by > 0 ? "This is the last board." : "This is the first board.");
    return along && this.piece ? this.pull(to) : this.look(to, -1);
  }
  letGo() {
    if (this.pointer.cancel()) return undefined;
    return this.look(this.sheet, -1);
  }

  // Released, a layout is not changed by anybody until the release is taken back.
  async release(path) {
    const by = this.find("by-whom").value.trim();
    if (!by) { this.find("by-whom").focus(); return this.tell("Found no name; wanted the name of the one who stands for it."); }
    if (path === "/release" && this.now.sheets !== this.layout.sheets) return this.tell("Not released: the layout on the screen is not saved. Save it, or go back to the saved one, first.");
    const answer = await this.talk.ask(path, { by, mark: this.layout.mark });
    if (answer.refused) return this.tell(`${path === "/release" ? "Not released" : "Not taken back"}. ${answer.refused}`);
    this.take(answer.result);
    this.past = [{ sheets: this.layout.sheets, report: this.layout.report, told: "" }];
    [this.at, this.sheet, this.spot, this.clearances] = [0, Math.min(this.sheet, this.layout.report.sheets.length - 1), -1, []];
    this.draw();
    return this.tell(this.held ? `Released by ${by}: layout ${this.layout.shortMark} is not changed until that is taken back.` : `Taken back by ${by}: the layout may be changed.`);
  }

  // A search shows each better layout; it is only taken when the person takes it.
  async finish() {
    if (!this.free) return;
    if (this.held) return this.edit({ verb: "finish" });
    const before = this.past[this.at];
    const mine = (this.searchNumber ?? 0) + 1;
    [this.searching, this.searchNumber] = [true, mine];
    this.found(null);
    const heard = (news) => { if (this.searching !== null && this.searchNumber === mine) this.found(news); };
    const stop = await this.talk.search(before.sheets, heard, heard);
    if (this.searching !== null && this.searchNumber === mine) this.stopSearch = stop;
    else stop?.();
  }
  found(news) {
    if (news?.found) {
      const { sheets, report } = news.found;
      this.trial = { sheets, report, told: "" };
      [this.sheet, this.spot, this.clearances] = [Math.min(this.sheet, sheets.length - 1), -1, []];
    }
    if (news?.ended) this.searching = false;
    const line = this.find("search");
    line.textContent = !news ? "Searching …" : news.found
      ? `Layout ${news.found.number} after ${number(news.seconds, 1)} s: ${this.size(news.found.report)}, ${number(news.found.report.fillPercent, 1)} % under pieces${news.ended ? `. Ended: ${news.ended}.` : " …"}`
      : `Ended: ${news.ended}.`;
    if (news?.ended) this.tell(line.textContent);
    this.draw();
  }
  takeTrial() {
    this.stopSearch?.();
    const taken = this.trial;
    this.endTrial();
    if (!taken) return;
    this.push(taken, null);
    this.draw();
    this.tell(`Taken: ${this.size(taken.report)}. ${this.wrongWords()}`);
  }
  leaveTrial() {
    this.stopSearch?.();
    this.endTrial();
    this.sheet = Math.min(this.sheet, this.report.sheets.length - 1);
    this.draw();
    this.tell("Put back: the layout is as it was before the search.");
  }
  endTrial() { [this.trial, this.searching, this.stopSearch] = [null, null, null]; this.find("search").textContent = ""; }

  async save() {
    if (!this.free || this.held) return;
    this.tell("Saving …");
    const answer = await this.talk.ask("", { sheets: this.now.sheets, mark: this.layout.mark }, "PUT");
    if (answer.refused) return this.tell(`Not saved. ${answer.refused}`);
    this.take(answer.result.layout);
    this.push({ sheets: this.layout.sheets, report: this.layout.report, told: "" }, null);
    this.saved = true;
    [this.sheet, this.spot, this.clearances] = [Math.min(this.sheet, this.report.sheets.length - 1), -1, []];
    this.draw();
    const run = encodeURIComponent(this.layout.runId);
    this.find("saving").replaceChildren("Saved. The set-up sheet follows it. ", make("a", { href: `/runs/${run}#make` }, "Make the press files"), " of this layout, or read its ", make("a", { href: `/runs/${run}/set-up` }, "set-up sheet"), ".");
    return this.tell(`Saved. ${this.size(this.report)}.`);
  }
  // The ink is measured in the background; until then there is no price.
  async price() {
    for (let tries = 0; tries < 60 && !this.layout.report.cost && this.layout.report.canBeSaved; tries++) {
      await new Promise((done) => { setTimeout(done, 500 + 250 * tries); });
      const answer = await this.talk.ask("/check", { sheets: this.layout.sheets });
      if (answer.result?.report.cost) {
        this.layout.report = answer.result.report;
        if (this.at === 0) this.past[0].report = answer.result.report;
        this.draw();
      }
    }
  }

  size(report) { return this.layout.isRoll ? `${number(report.rollM, 2)} m of roll` : `${report.sheetCount} ${report.sheetCount === 1 ? "board" : "boards"}`; }
  wrongWords() { const n = this.report.conflicts.length; return n === 0 ? "No conflict." : `${n} ${n === 1 ? "conflict" : "conflicts"}.`; }
  tell(words) { this.find("told").textContent = words; }

  draw() {
    this.drawBench();
    this.drawRack();
    this.drawSlip();
    this.drawFigures();
    this.drawConflicts();
    this.drawEnds();
  }
  options(sheet, more) {
    const shown = (name) => this.root.querySelector(`[data-show="${name}"]`)?.checked ?? false;
    return {
      pieces: this.pieces, chosen: -1, clearances: [], small: false, marginMm: this.layout.edgeMarginMm, leadMm: this.layout.isRoll ? this.layout.leadMm : null,
      mirrored: this.layout.mirrored, drawing: more.small ? `rack-${sheet}` : "bench", pictures: shown("pictures"), cuts: shown("cuts"), conflicts: this.report.conflicts.filter((c) => c.sheet === sheet), ...more,
    };
  }
  drawBench() {
    if (!this.here) return;
    const plate = this.find("plate"), wide = plate.clientWidth - 2, high = Math.max(300, Math.min(window.innerHeight * 0.62, 760));
    const frame = wide < 560 ? { left: 22, right: 6, top: 24, bottom: 8 } : { left: 30, right: 10, top: 28, bottom: 10 };
    this.view = new View(this.here.size, wide * this.zoom, high * this.zoom, frame, this.layout.isRoll ? 180 * this.zoom : 0);
    this.bench.replaceChildren(drawSheet(this.here, this.view, this.options(this.sheet, { chosen: this.spot, clearances: this.clearances })));
    this.bench.setAttribute("aria-label", `${this.layout.isRoll ? "Roll" : `Board ${this.sheet + 1} of ${this.report.sheets.length}`}, ${this.here.spots.length} pieces`);
    const times = this.here.repeats > 1 ? `, printed ${this.here.repeats} times` : "", lying = this.view.lying ? " Drawn lying, its top to the right." : "";
    const apart = this.here.cuts.length > 0 ? ` The saw takes it apart in ${this.here.stages} stages.` : "";
    this.find("caption").textContent = `${this.layout.isRoll ? "Roll" : `Board ${this.sheet + 1}`}${times}: ${number(this.here.fillPercent, 1)} % under pieces.${apart}${lying} Dot: the corner that is measured from.`;
  }
  drawRack() {
    const most = Math.max(...this.report.sheets.map((s) => Math.max(s.size.widthMm, s.size.heightMm)));
    this.find("rack").replaceChildren(...this.report.sheets.map((sheet, i) => {
      const wrong = this.report.conflicts.filter((c) => c.sheet === i).length, bare = { left: 1, right: 1, top: 1, bottom: 1 };
      const long = Math.max(sheet.size.widthMm, sheet.size.heightMm) / most * 150;
      const view = new View(sheet.size, long, long, bare);
      const words = `${this.layout.isRoll ? "Roll" : `Board ${i + 1}`}${sheet.repeats > 1 ? ` × ${sheet.repeats}` : ""}, ${number(sheet.fillPercent, 0)} %${wrong ? `, ${wrong} wrong` : ""}`;
      const button = make("button", { type: "button", "aria-current": i === this.sheet ? "true" : null }, drawSheet(sheet, view, this.options(i, { small: true, chosen: i === this.sheet ? this.spot : -1, cuts: false })), make("span", {}, words));
      button.addEventListener("click", () => (this.free ? this.look(i, -1) : this.show(i)));
      return make("li", { "data-board": i }, button);
    }));
  }
  show(i) { [this.sheet, this.spot] = [i, -1]; this.draw(); }
  drawSlip() {
    const select = this.find("piece"), spot = this.piece;
    select.replaceChildren(make("option", { value: -1 }, "none in hand"), ...(this.here?.spots ?? []).map((s, i) => make("option", { value: i }, `${s.name} · ${s.copy}${s.locked ? " (locked)" : ""}`)));
    select.value = String(this.spot);
    // Drawn anew for another reason, such as a cost that arrives, the fields keep what is being typed.
    const at = spot ? [Math.round(spot.xMm * 1000) / 1000, Math.round(spot.yMm * 1000) / 1000] : ["", ""], written = [this.sheet, this.spot, ...at].join();
    if (written !== this.written) [this.find("x").value, this.find("y").value] = at;
    this.written = written;
    this.find("to")?.replaceChildren(...this.report.sheets.map((_, i) => make("option", { value: i }, `board ${i + 1}`)));
    if (this.find("to")) this.find("to").value = String(this.sheet);
    this.root.querySelector('[data-do="lock"]').setAttribute("aria-pressed", String(spot?.locked ?? false));
    const side = { left: "to the left", right: "to the right", below: "below", above: "above" };
    this.find("clearances").textContent = spot && this.clearances.length
      ? `Room: ${this.clearances.map((c) => `${say(c.mm)} mm ${side[c.side]} to ${c.spot === null ? "the edge" : `${this.here.spots[c.spot].name} · ${this.here.spots[c.spot].copy}`}`).join("; ")}.`
      : "Tap or click a piece, or choose it here; then drag it, or drag it onto another board.";
  }
  drawFigures() {
    const put = (name, words) => { const e = this.root.querySelector(`[data-figure="${name}"]`); if (e && e.textContent !== words) e.textContent = words; };
    const { report } = this, was = this.layout.report, roll = this.layout.isRoll;
    const [count, before] = roll ? [report.rollM, was.rollM] : [report.sheetCount, was.sheetCount];
    put("sheets", roll ? number(count, 2) : String(count));
    put("sheets-was", (roll ? "m" : "") + (Math.abs(count - before) < 0.005 ? "" : ` saved: ${roll ? number(before, 2) : before}`));
    put("fill", number(report.fillPercent, 1));
    put("offcut", report.offcutMm ?? "none");
    put("cost", report.cost ? number(report.cost.cost.cents / 100, 2) : report.conflicts.some((c) => c.severity === "stop") ? "–" : "…");
    const dear = report.cost && was.cost ? (report.cost.cost.cents - was.cost.cost.cents) / 100 : 0;
    put("cost-was", `${this.root.dataset.currency}${Math.abs(dear) >= 0.005 ? `, ${dear < 0 ? "−" : "+"}${number(Math.abs(dear), 2)}` : ""}`);
    put("conflicts", String(report.conflicts.length));
    this.root.querySelector('[data-figure="conflicts"]').classList.toggle("bad", !report.conflicts.every((c) => c.severity !== "stop"));
  }
  drawConflicts() {
    const { conflicts, missing } = this.report;
    this.find("sound").hidden = conflicts.length > 0;
    this.find("conflicts").replaceChildren(...conflicts.slice(0, 60).map((c) => {
      const go = make("button", { type: "button", class: `hl-go ${c.severity}` }, `${c.number} · ${c.sheet < 0 || this.layout.isRoll ? "" : `board ${c.sheet + 1}: `}${c.words}`);
      go.disabled = c.sheet < 0 || !this.free;
      go.addEventListener("click", () => this.look(c.sheet, c.spots[0] ?? -1).then(() => this.bench.focus()));
      return make("li", {}, go);
    }), ...(conflicts.length > 60 ? [make("li", {}, `and ${conflicts.length - 60} more`)] : []));
    this.find("missing").replaceChildren(...missing.map((m) => {
      const put = make("button", { type: "button", class: "button" }, `Put ${m.name} on ${this.sheetWord(this.sheet)} (${m.copies} without a place)`);
      put.disabled = !this.free;
      put.addEventListener("click", () => this.edit({ verb: "put", pieceId: m.pieceId }));
      return make("li", {}, put);
    }));
  }
  drawEnds() {
    const set = (name, { hidden = false, disabled = false }) => { const b = this.root.querySelector(`[data-do="${name}"]`); if (b) [b.hidden, b.disabled] = [hidden, disabled]; };
    const shut = !this.free || this.held, unsaved = this.now.sheets !== this.layout.sheets;
    set("undo", { disabled: shut || this.at === 0 });
    set("redo", { disabled: shut || this.at === this.past.length - 1 });
    set("back", { disabled: shut || !unsaved });
    set("save", { disabled: shut || !this.report.canBeSaved || !unsaved });
    set("finish", { hidden: this.searching === true || Boolean(this.trial), disabled: this.held });
    set("release", { hidden: this.held, disabled: shut || unsaved || !this.report.canBeSaved });
    set("takeBack", { hidden: !this.held });
    this.root.classList.toggle("held", this.held);
    this.drawFiles(unsaved);
    set("take", { hidden: !this.trial });
    set("stop", { hidden: this.searching !== true });
    set("leave", { hidden: !this.trial });
    set("split", { disabled: shut || !(this.here?.repeats > 1) });
    for (const name of ["turn", "lock", "takeOff"]) set(name, { disabled: shut || !this.piece });
    for (const name of ["addSheet", "lockSheet", "unlockSheet", "clear"]) set(name, { disabled: shut });
    for (const b of this.root.querySelectorAll("[data-step], [data-slip] [type=submit]")) b.disabled = shut || !this.piece;
    const { locked, pieces } = this.report;
    this.find("locked").textContent = `${locked} of ${pieces} pieces drawn are locked and stay. The rest is laid out anew: a first layout at once, better ones while you look.`;
  }
  // What can be fetched is the layout as it is saved; sheets beyond the first few are listed behind one word.
  drawFiles(unsaved) {
    const { release, shortMark, runId, sheets } = this.layout;
    this.find("release-state").textContent = this.held
      ? `Layout ${shortMark} is released by ${release.by}, ${when(release.at)}. It is not changed until that is taken back.`
      : `Layout ${shortMark} is not released.${release ? ` ${release.takenBackBy} took the last release back, ${when(release.takenBackAt)}.` : ""}${unsaved ? " What is on the screen is not saved yet." : ""}`;
    this.find("files-of").textContent = `Of layout ${shortMark} as it is saved${unsaved ? ", not of the changes on the screen" : ""}: what is cut, in millimetres.`;
    const link = (name, words) => make("a", { href: `/api/runs/${encodeURIComponent(runId)}/layout/files/${name}`, download: "" }, words);
    const each = (end) => sheets.map((_, i) => link(`sheet-${String(i + 1).padStart(2, "0")}.${end}`, sheets.length > 1 ? `${end.toUpperCase()} of ${this.layout.isRoll ? "the roll" : `board ${i + 1}`}` : end.toUpperCase()));
    const line = (links) => make("li", {}, ...links.flatMap((a, i) => (i ? [" ", a] : [a])));
    this.find("files").replaceChildren(line([link("cut.pdf", "PDF of all, a page each")]), line(each("svg")), line(each("dxf")), line([link("layout.json", "The layout itself, JSON")]));
  }
  enlarge(by) {
    this.zoom = by === 0 ? 1 : Math.min(8, Math.max(0.5, this.zoom * (by > 0 ? 1.5 : 1 / 1.5)));
    this.drawBench();
    this.tell(`Drawn at ${Math.round(this.zoom * 100)} % of the width.`);
  }
}

for (const root of document.querySelectorAll("[data-hand-layout]")) new HandLayout(root);
