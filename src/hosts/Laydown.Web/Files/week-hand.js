// The week under a hand: a run's bar is dragged, or moved by keys, along time; the shop says what that would make late and plans the rest around it.
import { long, said, WeekAxis } from "./week-axis.js";

const STEP = 15, STARTS_PX = 4, EDGE_PX = 40, LEAST_PX = 24, SETTLE_MS = 250, SNAP_PX = 12;

const make = (name, attributes = {}) => {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  return made;
};

async function ask(path, body, signal) {
  try {
    const answer = await fetch(path, { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify(body), signal });
    const told = await answer.json();
    if (answer.ok) return { result: told.result };
    return { refused: (told.result?.faults ?? []).map((f) => `Found ${f.found}; wanted ${f.wanted}.`).join(" ") || `The shop answered ${answer.status}.` };
  } catch (failure) {
    return failure.name === "AbortError" ? { aborted: true } : { refused: "The shop does not answer." };
  }
}

class WeekHand {
  constructor(top) {
    this.top = top;
    this.told = top.querySelector("[data-told]");
    this.back = top.querySelector("[data-do=back]");
    this.back.addEventListener("click", () => this.takeBack());
    document.addEventListener("keydown", (e) => this.away(e));
    top.hidden = false;
    this.build();
    this.say("Take a run by dragging its bar, or with the Tab key and the arrows.");
  }

  // Lays a button over every bar of the drawing.
  build() {
    this.root = document.querySelector("[data-week]");
    if (!this.root) { this.top.dataset.live = "true"; return; }
    this.week = JSON.parse(this.root.dataset.json);
    this.axis = new WeekAxis(this.week);
    this.plate = this.root.querySelector(".plate");
    const svg = this.plate.querySelector("svg"), bed = make("div", { class: "wk-bed" });
    this.layer = make("div", { class: "wk-layer", role: "group", "aria-label": "Runs, to be moved" });
    svg.replaceWith(bed);
    bed.append(svg, this.layer);
    this.rows = new Map(this.week.presses.map((p, i) => [p.id, i]));
    this.runs = new Map(this.week.runs.map((r) => [r.id, r]));
    for (const run of this.week.runs) this.layer.append(this.bar(run));
    this.choose(this.runs.has(this.chosen) ? this.chosen : this.week.runs[0]?.id);
    for (const [name, act] of Object.entries({ pointerdown: this.down, pointermove: this.move, pointerup: this.up, pointercancel: this.leave, keydown: this.key, focusin: this.focused, focusout: this.left }))
      this.layer.addEventListener(name, (e) => act.call(this, e));
    this.top.dataset.live = "true";
  }
  bar(run) {
    const press = this.week.presses[this.rows.get(run.press)], x = this.axis.x(run.setUp), wide = Math.max(LEAST_PX, this.axis.x(run.end) - x);
    const bar = make("button", { type: "button", class: "wk-run", "data-run": run.id, "aria-describedby": "wk-keys", tabindex: "-1" });
    bar.setAttribute("aria-label", `${run.id}, ${run.title}, on ${press.name}, begins ${said(run.startClock)}, printed ${said(run.endClock)}, ${run.late > 0 ? `late ${long(run.late)}` : "in time"}${run.held ? ", put by hand" : ""}${run.soon ? ", begins soon" : ""}`);
    Object.assign(bar.style, { left: `${x}px`, top: `${this.y(run.press)}px`, width: `${wide}px`, height: `${this.week.bar}px` });
    return bar;
  }
  y(press) { return this.week.top + this.week.row * this.rows.get(press); }
  barOf(id) { return this.layer.querySelector(`[data-run="${CSS.escape(id)}"]`); }
  choose(id) {
    if (id === undefined) return;
    for (const bar of this.layer.children) {
      bar.classList.toggle("chosen", bar.dataset.run === id);
      bar.tabIndex = bar.dataset.run === id ? 0 : -1;
    }
    this.chosen = id;
  }
  say(words) { this.told.textContent = words; }
  focused(event) { const id = event.target.dataset?.run; if (id && !this.hand) this.choose(id); }
  left(event) { if (this.hand?.byKey && event.relatedTarget !== this.barOf(this.hand.run.id)) this.leave(); }

  // A run taken in hand, not yet put down.
  take(run, byKey) { this.hand ??= { run, press: run.press, at: run.start, byKey }; }
  hover(press, at) {
    Object.assign(this.hand, { press, at });
    const { run } = this.hand, other = press !== run.press, lead = other ? 0 : this.axis.x(run.start) - this.axis.x(run.setUp);
    this.ghost ??= this.layer.appendChild(make("div", { class: "wk-ghost", "aria-hidden": "true" }));
    this.ghost.classList.toggle("other", other);
    Object.assign(this.ghost.style, {
      left: `${this.axis.x(at)}px`, top: `${this.y(press)}px`, height: `${this.week.bar}px`, width: `${Math.max(4, this.axis.x(run.end) - this.axis.x(run.setUp) - lead)}px`,
    });
    this.look();
  }
  // Once the hand rests, the shop reckons what it would make.
  look() {
    const { run, press, at } = this.hand, clock = this.axis.clock(press, at), name = this.week.presses[this.rows.get(press)].name;
    clearTimeout(this.settle);
    this.asked?.abort();
    if (press !== run.press) { this.say(`${run.id} on ${name}, ${said(clock)}: put there, it opens the page on which it is planned anew for that press.`); return; }
    this.say(`${run.id} from ${said(clock)}.`);
    this.settle = setTimeout(async () => {
      this.asked = new AbortController();
      const answer = await ask("/api/week/try", { kind: "put", runs: [run.id], at: clock }, this.asked.signal);
      if (this.hand?.run === run && this.hand.at === at && !answer.aborted) this.say(answer.refused ?? this.sentence(answer.result));
    }, SETTLE_MS);
  }
  sentence(t) {
    const late = t.later.slice(0, 3).map((l) => `${l.runId} ${long(l.lateMinutes)} late`).join(", "), more = t.later.length > 3 ? ` and ${t.later.length - 3} more` : "";
    return `${t.runId} would begin ${said(t.start)}, be printed ${said(t.end)} and ready ${said(t.ready)}, ${t.lateMinutes > 0 ? `${long(t.lateMinutes)} late` : "in time"}. `
      + `${t.later.length ? `It would make ${late}${more}.` : "It would make no other run later."}${t.sooner ? ` ${t.sooner} less late.` : ""}`;
  }
  leave() {
    const was = this.hand;
    this.drop();
    if (was && (was.byKey || was.began)) this.say(`${was.run.id} stays where it is.`);
  }
  drop() {
    clearTimeout(this.settle);
    this.asked?.abort();
    this.ghost?.remove();
    [this.hand, this.ghost] = [null, null];
    for (const bar of this.layer.querySelectorAll(".moving")) bar.classList.remove("moving");
  }

  async put() {
    const { run, press, at } = this.hand, clock = this.axis.clock(press, at);
    this.drop();
    if (press !== run.press) { location.assign(`/week/press/${encodeURIComponent(run.id)}?press=${encodeURIComponent(press)}&at=${clock}`); return; }
    if (at === run.start && !run.held) { this.say(`${run.id} stays where it is.`); return; }
    await this.change({ kind: "put", runs: [run.id], at: clock }, run.id, (now) => `${run.id} was put: it begins ${said(now.start)}`);
  }
  async takeBack() { await this.change({ kind: "back" }, null, (now) => `Taken back: ${now.runId} begins ${said(now.start)}`); }
  async change(body, before, words) {
    this.say("The rest is planned around it …");
    this.top.dataset.live = "busy";
    const answer = await ask("/api/week", body);
    if (answer.refused) { this.top.dataset.live = "true"; this.say(`${answer.refused} The week stays as it is.`); return; }
    const id = body.runs?.[0] ?? this.before, run = answer.result.runs.find((r) => r.runId === id), late = answer.result.lateRuns;
    this.chosen = id;
    await this.renew();
    this.before = before;
    this.back.hidden = !before;
    this.say(`${words(run)} and is ${run.lateMinutes > 0 ? `${long(run.lateMinutes)} late` : "in time"}; ${late === 0 ? "no run is late" : `${late} late in all`}.`);
    this.barOf(id)?.focus({ preventScroll: true });
  }
  // The page as it is now, drawn by the shop; only what changed is put in.
  async renew() {
    const scrolled = this.plate.scrollLeft, address = new URL(location.href);
    address.searchParams.set("as", "kept");
    address.searchParams.delete("refused");
    const fresh = new DOMParser().parseFromString(await (await fetch(address)).text(), "text/html");
    for (const part of [".title", "#week"]) document.querySelector(part)?.replaceWith(document.adoptNode(fresh.querySelector(part)));
    this.build();
    if (this.root) this.plate.scrollLeft = scrolled;
  }

  key(event) {
    const run = this.runs.get(event.target.dataset?.run);
    if (!run || event.ctrlKey || event.altKey || event.metaKey) return;
    const by = event.shiftKey ? 60 : STEP, rows = this.week.presses.map((p) => p.id);
    const acts = {
      ArrowRight: () => this.step(run, by), ArrowLeft: () => this.step(run, -by), ArrowUp: () => this.row(run, rows, -1), ArrowDown: () => this.row(run, rows, 1),
      n: () => this.next(run, 1), p: () => this.next(run, -1), Enter: () => this.hand && this.put(), " ": () => this.hand && this.put(),
    };
    const act = acts[event.key.length === 1 ? event.key.toLowerCase() : event.key];
    if (!act) return;
    event.preventDefault();
    act();
  }
  away(event) {
    if (event.key === "Escape" && this.hand) this.leave();
    else if (event.key === "z" && event.ctrlKey && !this.back.hidden && !/^(INPUT|SELECT|TEXTAREA)$/.test(event.target.tagName)) { event.preventDefault(); this.takeBack(); }
  }
  step(run, by) {
    this.take(run, true);
    this.hover(this.hand.press, this.axis.step(this.hand.press, this.hand.at, by));
    this.inSight();
  }
  row(run, rows, by) {
    this.take(run, true);
    const press = rows[Math.min(rows.length - 1, Math.max(0, rows.indexOf(this.hand.press) + by))];
    this.hover(press, this.axis.spanAt(press, this.hand.at) ? this.hand.at : this.axis.snap(press, this.hand.at, [], 0));
  }
  next(run, by) {
    if (this.hand) this.leave();
    const ids = this.week.runs.map((r) => r.id);
    this.barOf(ids[(ids.indexOf(run.id) + by + ids.length) % ids.length]).focus();
  }
  inSight() {
    const x = this.axis.x(this.hand.at), { scrollLeft: from, clientWidth: wide } = this.plate;
    if (x < from + EDGE_PX || x > from + wide - EDGE_PX) this.plate.scrollLeft = x - wide / 2;
  }

  // A finger takes a bar by a tap first, so that the drawing can still be scrolled over.
  down(event) {
    const run = this.runs.get(event.target.dataset?.run);
    if (!run || event.button !== 0) return;
    if (event.pointerType === "touch" && run.id !== this.chosen) return;
    event.preventDefault();
    event.target.focus({ preventScroll: true });
    this.drop();
    event.target.setPointerCapture(event.pointerId);
    this.drag = { id: event.pointerId, run, grip: this.place(event).x - this.axis.x(run.start), px: [event.clientX, event.clientY] };
  }
  place(event) {
    const box = this.layer.getBoundingClientRect();
    return { x: event.clientX - box.left, y: event.clientY - box.top };
  }
  move(event) {
    const drag = this.drag;
    if (!drag || event.pointerId !== drag.id) return;
    drag.latest = event;
    if (!this.hand) {
      if (Math.hypot(event.clientX - drag.px[0], event.clientY - drag.px[1]) < STARTS_PX) return;
      if (drag.began) return;
      drag.began = true;
      this.take(drag.run, false);
      this.hand.began = true;
      event.target.classList.add("moving");
    }
    const { x, y } = this.place(event), row = Math.min(this.week.presses.length - 1, Math.max(0, Math.floor((y - this.week.top + 22) / this.week.row)));
    const press = this.week.presses[row].id, lead = drag.run.start - drag.run.setUp;
    const ends = [...(this.axis.open.get(press) ?? []).map(([start]) => start + lead), ...this.week.runs.filter((r) => r.press === press && r.id !== drag.run.id).map((r) => r.end + lead)];
    this.hover(press, this.axis.snap(press, this.axis.minute(x - drag.grip), ends, SNAP_PX / this.axis.px));
    this.roll(drag);
  }
  // Held near an edge of the drawing, a bar takes it along.
  roll(drag) {
    if (drag.rolling) return;
    const step = () => {
      const box = this.plate.getBoundingClientRect(), x = drag.latest.clientX;
      const by = x < box.left + EDGE_PX ? x - box.left - EDGE_PX : x > box.right - EDGE_PX ? x - box.right + EDGE_PX : 0, before = this.plate.scrollLeft;
      drag.rolling = this.drag === drag && Boolean(this.hand) && by !== 0;
      if (!drag.rolling) return;
      this.plate.scrollLeft += Math.max(-16, Math.min(16, by / 2));
      if (this.plate.scrollLeft !== before) this.move(drag.latest);
      requestAnimationFrame(step);
    };
    step();
  }
  async up(event) {
    const drag = this.drag;
    if (!drag || event.pointerId !== drag.id) { const id = event.target.dataset?.run; if (id) this.barOf(id).focus({ preventScroll: true }); return; }
    this.drag = null;
    if (this.hand && !this.hand.byKey) await this.put();
  }
}

const top = document.querySelector("[data-week-top]");
if (top) new WeekHand(top);
