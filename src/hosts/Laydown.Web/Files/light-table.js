// The light table: sliders of room and lamp, the eye's adaptation, moving and enlarging by pointer, wheel, touch and keyboard, places, maps.
import { luminance, luxAt, said, sliderOf, whiteOf } from "./light-maths.js";
import { PictureTable } from "./picture-table.js";
import { PointPanel } from "./table-point.js";

const SETTLED = 0.01;
const still = () => window.matchMedia("(prefers-reduced-motion: reduce)").matches;

class LightTable extends PictureTable {
  constructor(root) {
    super(root);
    this.room = root.querySelector("[data-room]");
    this.lamp = root.querySelector("[data-lamp]");
    this.pins = JSON.parse(root.dataset.pins ?? "[]");
    this.canPin = "canPin" in root.dataset;
    this.panel = root.querySelector("[data-point-panel]") ? new PointPanel(root) : null;
    this.wire();
    this.fit();
    this.preset("day");
    if (root.querySelector('input[name="map"][value="reason"]')) for (const one of this.screens) this.loadMap(one, "reason");
    root.dataset.live = "true";
  }

  wire() {
    const root = this.root;
    this.wireHands();
    for (const slider of [this.room, this.lamp]) slider.addEventListener("input", () => { this.chosen(null); this.lights(); });
    for (const radio of root.querySelectorAll('input[name="adapt"]')) radio.addEventListener("change", () => this.lights());
    for (const button of root.querySelectorAll("[data-preset]")) button.addEventListener("click", () => this.preset(button.dataset.preset));
    for (const button of document.querySelectorAll("[data-go]")) button.addEventListener("click", () => this.go(button));
    for (const radio of root.querySelectorAll('input[name="map"]')) radio.addEventListener("change", () => this.chooseMap());
    root.querySelector("[data-map-strength]")?.addEventListener("input", () => this.redraw());
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
