// A picture in tiles under the hands: moved and enlarged by pointer, wheel, touch and keyboard; several beside each other move together.
import { said } from "./light-maths.js";
import { TileView } from "./tile-view.js";
import { drawOver } from "./table-over.js";

export const STEP = 1.25;

export class PictureTable {
  constructor(root) {
    this.root = root;
    this.view = { x: 0, y: 0, pxPerMm: 1 };
    this.map = null;
    this.pins = [];
    this.screens = [...root.querySelectorAll("[data-screen]")].map((element) => this.screen(element));
    this.table = this.screens[0].tiles.table;
  }

  screen(element) {
    const tiles = new TileView(element.querySelector("[data-tiles]"), JSON.parse(element.dataset.table), element.dataset.base, this.view);
    const one = { element, tiles, over: element.querySelector("[data-over]"), maps: {} };
    tiles.onDraw = () => { drawOver(this, one); this.root.dataset.whole = String(this.shown.every((o) => o.tiles.complete && !o.tiles.asked) && !this.settling); };
    tiles.onFail = () => this.say("Part of the picture does not come: the shop does not answer.");
    return one;
  }
  get shown() { return this.screens.filter((one) => one.element.clientWidth > 0); }

  // What every such page has: script instead of still pictures, buttons of size, hands on each picture.
  wireHands() {
    const root = this.root;
    for (const part of root.querySelectorAll("[data-stills]")) part.hidden = true;
    for (const part of root.querySelectorAll("[data-needs-script]")) part.hidden = false;
    for (const button of root.querySelectorAll("[data-zoom]")) button.addEventListener("click", () => this.zoomTo(button.dataset.zoom));
    for (const one of this.screens) this.hands(one);
    new ResizeObserver(() => { if (this.fitted) this.fit(); else this.redraw(); }).observe(this.screens[0].element);
    document.addEventListener("scheme-changed", () => this.redraw());
  }

  // Pointer, touch, wheel and keys on one picture.
  hands(one) {
    const element = one.element, down = new Map();
    let moved = 0, spread = 0;
    element.addEventListener("pointerdown", (e) => {
      if (e.button !== 0) return;
      element.setPointerCapture(e.pointerId);
      down.set(e.pointerId, [e.clientX, e.clientY]);
      moved = down.size > 1 ? 99 : 0;
      spread = 0;
    });
    element.addEventListener("pointermove", (e) => {
      const before = down.get(e.pointerId);
      if (!before) { if (e.pointerType !== "touch") this.over?.(one, ...this.local(one, e.clientX, e.clientY)); return; }
      down.set(e.pointerId, [e.clientX, e.clientY]);
      const dx = e.clientX - before[0], dy = e.clientY - before[1];
      moved += Math.hypot(dx, dy);
      if (down.size === 1 && moved > 4) this.move(-dx, -dy);
      if (down.size === 2) {
        const [a, b] = [...down.values()], now = Math.hypot(a[0] - b[0], a[1] - b[1]);
        this.move(-dx / 2, -dy / 2);
        if (spread > 0 && now > 0) this.zoom(now / spread, ...this.local(one, (a[0] + b[0]) / 2, (a[1] + b[1]) / 2));
        spread = now;
      }
    });
    const up = (e) => {
      const was = down.delete(e.pointerId);
      if (was && e.type === "pointerup" && moved <= 4) this.pick(one, ...this.local(one, e.clientX, e.clientY));
      spread = 0;
    };
    element.addEventListener("pointerup", up);
    element.addEventListener("pointercancel", up);
    element.addEventListener("wheel", (e) => {
      // The page itself scrolls until the picture was chosen by a press or a key.
      if (document.activeElement !== element && !e.ctrlKey) return;
      e.preventDefault();
      this.zoom(Math.exp(-Math.max(-120, Math.min(120, e.deltaY * (e.deltaMode === 1 ? 30 : 1))) * (e.ctrlKey ? 0.01 : 0.0025)), ...this.local(one, e.clientX, e.clientY));
    }, { passive: false });
    element.addEventListener("keydown", (e) => this.key(one, e));
    element.addEventListener("focus", () => this.redraw());
    element.addEventListener("blur", () => this.redraw());
  }

  key(one, e) {
    if (e.ctrlKey || e.metaKey || e.altKey) return;
    const step = (e.shiftKey ? 0.5 : 0.1) * Math.min(one.element.clientWidth, one.element.clientHeight);
    const acts = {
      "+": () => this.zoomMiddle(STEP), "=": () => this.zoomMiddle(STEP), "-": () => this.zoomMiddle(1 / STEP), "_": () => this.zoomMiddle(1 / STEP),
      ArrowLeft: () => this.move(-step, 0), ArrowRight: () => this.move(step, 0), ArrowUp: () => this.move(0, -step), ArrowDown: () => this.move(0, step),
      Home: () => this.fit(), End: () => this.zoomTo("pixel"),
      Enter: () => this.pick(one, one.tiles.midX, one.tiles.midY),
    };
    const act = acts[e.key];
    if (!act) return;
    e.preventDefault();
    this.byKeys = true;
    act();
  }

  local(one, clientX, clientY) {
    const box = one.element.getBoundingClientRect();
    return [clientX - box.left, clientY - box.top];
  }

  move(dx, dy) {
    this.view.x += dx / this.view.pxPerMm;
    this.view.y += dy / this.view.pxPerMm;
    this.fitted = false;
    this.keepIn();
    this.redraw();
    this.moved?.();
  }
  zoomMiddle(factor) { this.zoom(factor, this.screens[0].tiles.midX, this.screens[0].tiles.midY); }
  zoom(factor, x, y) {
    const tiles = this.screens[0].tiles, [xMm, yMm] = tiles.toMm(x, y);
    const wanted = Math.min(tiles.mostPxPerMm, Math.max(tiles.leastPxPerMm, this.view.pxPerMm * factor));
    // The place under the pointer stays where it is.
    this.view.x = xMm - (x - tiles.midX) / wanted;
    this.view.y = yMm - (y - tiles.midY) / wanted;
    this.view.pxPerMm = wanted;
    this.fitted = false;
    this.keepIn();
    this.redraw();
    this.moved?.();
  }
  zoomTo(what) {
    const tiles = this.screens[0].tiles;
    if (what === "fit") return this.fit();
    if (what === "in") return this.zoomMiddle(STEP * STEP);
    if (what === "out") return this.zoomMiddle(1 / (STEP * STEP));
    const wanted = what === "pixel" ? 1 / (tiles.table.mmPerPx * tiles.ratio) : 96 / 25.4;
    return this.zoomMiddle(wanted / this.view.pxPerMm);
  }
  fit() {
    const tiles = this.screens[0].tiles, t = tiles.table;
    Object.assign(this.view, { x: t.finishedMm.widthMm / 2, y: t.finishedMm.heightMm / 2, pxPerMm: tiles.fitPxPerMm });
    this.fitted = true;
    this.redraw();
    this.moved?.();
  }
  keepIn() {
    const { widthMm, heightMm } = this.table.finishedMm;
    this.view.x = Math.min(widthMm, Math.max(0, this.view.x));
    this.view.y = Math.min(heightMm, Math.max(0, this.view.y));
  }
  redraw() {
    this.root.dataset.whole = "false";
    for (const one of this.screens) {
      one.element.style.touchAction = this.fitted ? "pan-y" : "none";
      one.tiles.ask();
    }
    const zoom = this.root.querySelector("[data-zoom-said]");
    const scale = this.screens[0].tiles.scale;
    if (zoom) zoom.textContent = Math.abs(scale - 1) < 1e-3 ? "One pixel of the ink is one of the screen." : scale > 1 ? `One pixel of the ink is ${said(scale)} of the screen wide.` : `${said(1 / scale)} pixels of the ink lie in one of the screen.`;
  }

  write(what, words) { for (const part of this.root.querySelectorAll(what)) part.textContent = words; }
  say(words) { const told = this.root.querySelector("[data-told]"); if (told) told.textContent = words; }
}
