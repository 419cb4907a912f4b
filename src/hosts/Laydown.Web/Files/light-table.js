// The light table: sliders of room and lamp, the eye's adaptation, moving and enlarging by pointer, wheel, touch and keyboard, places, maps.
import { luminance, luxAt, said, sliderOf, whiteOf } from "./light-maths.js";
import { TileView } from "./tile-view.js";
import { drawOver } from "./table-over.js";
import { PointPanel } from "./table-point.js";

const STEP = 1.25, SETTLED = 0.01;
const still = () => window.matchMedia("(prefers-reduced-motion: reduce)").matches;

class LightTable {
  constructor(root) {
    this.root = root;
    this.view = { x: 0, y: 0, pxPerMm: 1 };
    this.screens = [...root.querySelectorAll("[data-screen]")].map((element) => this.screen(element));
    this.table = this.screens[0].tiles.table;
    this.room = root.querySelector("[data-room]");
    this.lamp = root.querySelector("[data-lamp]");
    this.map = null;
    this.pins = JSON.parse(root.dataset.pins ?? "[]");
    this.canPin = "canPin" in root.dataset;
    this.panel = root.querySelector("[data-point-panel]") ? new PointPanel(root) : null;
    this.wire();
    this.fit();
    this.preset("day");
    if (root.querySelector('input[name="map"][value="reason"]')) for (const one of this.screens) this.loadMap(one, "reason");
    root.dataset.live = "true";
  }

  screen(element) {
    const tiles = new TileView(element.querySelector("[data-tiles]"), JSON.parse(element.dataset.table), element.dataset.base, this.view);
    const one = { element, tiles, over: element.querySelector("[data-over]"), maps: {} };
    tiles.onDraw = () => { drawOver(this, one); this.root.dataset.whole = String(this.screens.every((o) => o.tiles.complete && !o.tiles.asked) && !this.settling); };
    tiles.onFail = () => this.say("Part of the picture does not come: the shop does not answer.");
    return one;
  }

  wire() {
    const root = this.root;
    for (const part of root.querySelectorAll("[data-stills]")) part.hidden = true;
    for (const part of root.querySelectorAll("[data-needs-script]")) part.hidden = false;
    for (const slider of [this.room, this.lamp]) slider.addEventListener("input", () => { this.chosen(null); this.lights(); });
    for (const radio of root.querySelectorAll('input[name="adapt"]')) radio.addEventListener("change", () => this.lights());
    for (const button of root.querySelectorAll("[data-preset]")) button.addEventListener("click", () => this.preset(button.dataset.preset));
    for (const button of root.querySelectorAll("[data-zoom]")) button.addEventListener("click", () => this.zoomTo(button.dataset.zoom));
    for (const button of document.querySelectorAll("[data-go]")) button.addEventListener("click", () => this.go(button));
    for (const radio of root.querySelectorAll('input[name="map"]')) radio.addEventListener("change", () => this.chooseMap());
    root.querySelector("[data-map-strength]")?.addEventListener("input", () => this.redraw());
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
      if (!before) return;
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
  }
  keepIn() {
    const { widthMm, heightMm } = this.table.finishedMm;
    this.view.x = Math.min(widthMm, Math.max(0, this.view.x));
    this.view.y = Math.min(heightMm, Math.max(0, this.view.y));
  }
  go(button) {
    const [x, y, view] = button.dataset.go.split(",");
    this.preset(view);
    Object.assign(this.view, { x: Number(x), y: Number(y), pxPerMm: Math.max(this.view.pxPerMm, 3 * this.screens[0].tiles.fitPxPerMm) });
    this.fitted = false;
    this.redraw();
    this.screens[0].element.scrollIntoView({ block: "center" });
    this.screens[0].element.focus({ preventScroll: true });
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

  preset(name) {
    const t = this.table, dusk = Math.sqrt(Math.max(1, t.dayLux) * Math.max(1, t.nightLux));
    const lux = name === "day" ? t.dayLux : name === "night" ? t.nightLux : dusk;
    this.room.value = sliderOf(lux);
    this.exactLux = lux;
    this.lamp.value = name === "day" ? 0 : 100;
    this.chosen(name);
    this.lights();
  }
  chosen(name) {
    if (name === null) this.exactLux = null;
    for (const button of this.root.querySelectorAll("[data-preset]")) button.setAttribute("aria-pressed", String(button.dataset.preset === name));
  }

  get roomNow() { return (this.exactLux ?? luxAt(Number(this.room.value))) / Math.PI; }
  get lampNow() { return (Number(this.lamp.value) / 100) * this.table.lampCdPerM2; }
  get pinView() { return this.lampNow > 0 ? "night" : "day"; }

  lights() {
    const adapt = this.root.querySelector('input[name="adapt"]:checked')?.value ?? "brighter";
    const lux = this.roomNow * Math.PI, lamp = this.lampNow;
    this.aim = this.screens.map((one) => whiteOf({ ...one.tiles.table, ...one.tiles.whole?.size }, this.roomNow, lamp, adapt));
    this.write("[data-room-said]", `${said(lux)} lux`);
    this.write("[data-lamp-said]", `${said(lamp)} cd/m²`);
    this.room.setAttribute("aria-valuetext", `${said(lux)} lux`);
    this.lamp.setAttribute("aria-valuetext", `${said(lamp)} candela per square metre`);
    this.root.classList.toggle("lamp-on", lamp > 0);
    document.querySelectorAll("[data-follows-lamp]").forEach((part) => { part.classList.add("follows"); part.classList.toggle("lamp-off", !(lamp > 0)); });
    this.write("[data-white-said]", said(luminance(this.table, this.aim[0])));
    if (adapt !== "brighter" || still() || !this.white) this.white = this.aim;
    this.settle();
  }

  // Following the brighter light the eye takes a moment, as eyes do.
  settle() {
    this.root.dataset.whole = "false";
    this.white = this.white.map((w, i) => w.map((v, c) => {
      const to = this.aim[i][c];
      return v > 0 && to > 0 && Math.abs(Math.log(to / v)) > SETTLED ? v * (to / v) ** 0.16 : to;
    }));
    this.screens.forEach((one, i) => one.tiles.setLight(this.roomNow, this.lampNow, this.white[i]));
    if (this.white.some((w, i) => w.some((v, c) => v !== this.aim[i][c]))) {
      if (!this.settling) {
        this.settling = true;
        requestAnimationFrame(() => { this.settling = false; this.settle(); });
      }
    }
  }

  // The map of reasons is fetched even when it is not laid over: a place out of reach says why.
  loadMap(one, name) {
    if (one.maps[name]) return;
    const picture = new Image();
    picture.onload = () => this.redraw();
    picture.src = `${one.element.dataset.files}/map-${name}.png`;
    one.maps[name] = picture;
  }

  chooseMap() {
    const chosen = this.root.querySelector('input[name="map"]:checked')?.value ?? "none";
    this.map = chosen === "none" ? null : chosen;
    for (const legend of this.root.querySelectorAll("[data-map-legend]")) legend.hidden = legend.dataset.mapLegend !== chosen;
    if (this.map) for (const one of this.screens) this.loadMap(one, this.map);
    this.redraw();
  }

  pick(one, x, y) {
    const [xMm, yMm] = one.tiles.toMm(x, y), pixel = one.tiles.pixelAt(xMm, yMm);
    if (!pixel) return;
    this.mark = [xMm, yMm];
    if (this.canPin) this.setPin(xMm, yMm);
    else if (this.panel) this.panel.show(this, one, pixel);
    this.redraw();
  }

  setPin(xMm, yMm) {
    const t = this.table.finishedMm;
    const [x, y] = [Math.min(t.widthMm, Math.max(0, xMm)), Math.min(t.heightMm, Math.max(0, yMm))];
    const form = document.querySelector("[data-pin-form]");
    form.elements.x.value = x.toFixed(1);
    form.elements.y.value = y.toFixed(1);
    form.elements.view.value = this.pinView;
    form.elements.change?.click();
    document.querySelector("[data-pin-said]").textContent =
      `${x.toFixed(0)} mm from the left, ${y.toFixed(0)} mm from the top, ${this.pinView === "night" ? "with the lamp on" : "by day"}`;
    document.querySelector("[data-pin-clear]").hidden = false;
  }
  clearPin() {
    const form = document.querySelector("[data-pin-form]");
    for (const name of ["x", "y", "view"]) form.elements[name].value = "";
    document.querySelector("[data-pin-said]").textContent = "the whole piece; press on the picture to mean one place";
    document.querySelector("[data-pin-clear]").hidden = true;
    this.mark = null;
    this.redraw();
  }

  // A preview takes the place of the first picture, with the eye used to what it shows, until it is ended.
  async preview(size, body) {
    await this.screens[0].tiles.showWhole(size, body);
    this.lights();
  }
  endPreview() {
    this.screens[0].tiles.hideWhole();
    this.lights();
  }

  write(what, words) { for (const part of this.root.querySelectorAll(what)) part.textContent = words; }
  say(words) { const told = this.root.querySelector("[data-told]"); if (told) told.textContent = words; }
}

for (const root of document.querySelectorAll("[data-light-table]")) {
  try {
    root.lightTable = new LightTable(root);
    document.querySelector("[data-pin-clear]")?.addEventListener("click", () => root.lightTable.clearPin());
  } catch (why) {
    // Without WebGL2 the two still pictures stay, with a note.
    root.dataset.live = "stills";
    root.querySelector("[data-no-webgl]")?.removeAttribute("hidden");
  }
}
