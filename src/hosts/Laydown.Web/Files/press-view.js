// Looking at a made sheet: what of it is seen, one or two pictures moving together, pieces by name, places in mm, what lies under the pointer.
import { said } from "./light-maths.js";
import { PictureTable } from "./picture-table.js";
import { steps } from "./table-over.js";

const LAMP = 1000, HOVER_MS = 60, PATIENCE_MS = 900;
const number = (v, digits) => v.toFixed(digits).replace("-", "−");
const make = (name, attributes = {}, ...inside) => {
  const made = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...inside);
  return made;
};

class PressView extends PictureTable {
  constructor(root) {
    super(root);
    this.sheet = this.table;
    this.told = root.querySelector("[data-told]");
    this.two = root.querySelector("[data-two]");
    this.named = root.querySelector("[data-outlines]");
    this.lamp = false;
    this.wire();
    this.open();
    this.waitFor();
    root.dataset.live = "true";
  }

  wire() {
    const root = this.root;
    this.wireHands();
    this.screens.forEach((one) => {
      one.choice = root.querySelector(`[data-seen="${one.element.dataset.side}"]`);
      one.choice.addEventListener("change", () => { this.see(one); this.link(); });
    });
    this.two.addEventListener("change", () => { this.sides(); this.link(); });
    this.named.addEventListener("change", () => { this.redraw(); this.link(); });
    for (const button of root.querySelectorAll("[data-lit]")) button.addEventListener("click", () => { this.light(button.dataset.lit === "lamp"); this.link(); });
    root.querySelector("[data-piece-form]")?.addEventListener("submit", (e) => { e.preventDefault(); this.goPiece(); });
    root.querySelector("[data-place-form]").addEventListener("submit", (e) => { e.preventDefault(); this.goPlace(); });
  }

  // The address says what is seen, so that it can be sent to someone.
  open() {
    const asked = new URLSearchParams(location.search);
    const set = (one, word) => { if (word && [...one.choice.options].some((o) => o.value === word)) one.choice.value = word; };
    set(this.screens[0], asked.get("seen"));
    set(this.screens[1], asked.get("beside"));
    this.two.checked = asked.has("beside");
    this.named.checked = asked.get("names") !== "off";
    this.sides();
    this.light(asked.get("light") === "lamp");
    for (const one of this.screens) this.see(one);
    this.fit();
    const [x, y, across] = ["x", "y", "across"].map((name) => parseFloat(asked.get(name)));
    if (Number.isFinite(x) && Number.isFinite(y)) {
      Object.assign(this.view, { x, y });
      if (across > 0) this.view.pxPerMm = this.within(this.screens[0].element.clientWidth / across);
      this.fitted = false;
      this.keepIn();
      this.mark = [this.view.x, this.view.y];
      this.redraw();
      this.ask(this.screens[0], this.mark, false);
    }
    this.opened = true;
  }
  link() {
    if (!this.opened) return;
    const q = new URLSearchParams(location.search);
    for (const name of ["seen", "beside", "light", "names", "x", "y", "across"]) q.delete(name);
    q.set("seen", this.screens[0].choice.value);
    if (this.two.checked) q.set("beside", this.screens[1].choice.value);
    if (this.lamp) q.set("light", "lamp");
    if (!this.named.checked) q.set("names", "off");
    if (!this.fitted) {
      q.set("x", this.view.x.toFixed(3));
      q.set("y", this.view.y.toFixed(3));
      q.set("across", (this.screens[0].element.clientWidth / this.view.pxPerMm).toPrecision(4));
    }
    history.replaceState(null, "", `${location.pathname}?${q}${location.hash}`);
  }

  sides() {
    this.root.classList.toggle("two", this.two.checked);
    for (const part of this.root.querySelectorAll("[data-second]")) part.hidden = !this.two.checked;
    this.redraw();
  }
  see(one) {
    const word = one.choice.value, lit = word === "all" || word.startsWith("layer-");
    one.lit = lit;
    one.tiles.show(this.sheet, `${this.root.dataset.base}/seen/${word}`);
    const name = one.choice.selectedOptions[0].dataset.said;
    one.element.setAttribute("aria-label", `${this.root.dataset.title}, ${name}`);
    for (const part of this.root.querySelectorAll(`[data-caption="${one.element.dataset.side}"]`)) part.textContent = name;
    this.light(this.lamp);
    this.waitFor();
  }
  light(lamp) {
    this.lamp = lamp && this.sheet.lit;
    for (const button of this.root.querySelectorAll("[data-lit]")) button.setAttribute("aria-pressed", String((button.dataset.lit === "lamp") === this.lamp));
    for (const one of this.screens) {
      if (this.lamp && one.lit) one.tiles.setLight(0, LAMP, this.sheet.lampWhite.map((v) => Math.max(1e-3, v * LAMP)));
      else one.tiles.setLight(1, 0, [1, 1, 1]);
    }
  }

  // Means of a sheet are made when it is first looked at: someone who waits is told why.
  waitFor() {
    clearTimeout(this.patience);
    this.patience = setTimeout(() => {
      if (this.shown.every((one) => one.tiles.complete)) return;
      this.say("The sheet is read once, so that it can be seen from afar. This takes a moment.");
      const look = setInterval(() => {
        if (!this.shown.every((one) => one.tiles.complete)) return;
        clearInterval(look);
        this.say("The sheet is ready.");
      }, 200);
    }, PATIENCE_MS);
  }

  within(pxPerMm) { const t = this.screens[0].tiles; return Math.min(t.mostPxPerMm, Math.max(t.leastPxPerMm, pxPerMm)); }
  moved() {
    clearTimeout(this.linking);
    this.linking = setTimeout(() => this.link(), 250);
    if (this.byKeys && document.activeElement === this.screens[0].element) this.over(this.screens[0], this.screens[0].tiles.midX, this.screens[0].tiles.midY);
  }
  redraw() {
    super.redraw();
    const zoom = this.root.querySelector("[data-zoom-said]"), scale = this.screens[0].tiles.scale, what = this.table.isDots ? "dot" : "pixel";
    const across = this.root.querySelector("[data-across-said]");
    if (across) across.textContent = `${said(this.screens[0].element.clientWidth / this.view.pxPerMm)} mm across.`;
    if (zoom) zoom.textContent = scale >= 1 ? `One ${what} of the file is ${said(scale)} of the screen wide.` : `${said(1 / scale)} ${what}s of the file lie in one of the screen.`;
  }
  zoomTo(what) {
    if (what === "dot") return this.zoomMiddle(16 / this.screens[0].tiles.scale);
    return super.zoomTo(what);
  }

  goTo(x, y, pxPerMm) {
    Object.assign(this.view, { x, y, pxPerMm: this.within(pxPerMm) });
    this.fitted = false;
    this.keepIn();
    this.mark = [this.view.x, this.view.y];
    this.redraw();
    this.moved();
    this.ask(this.screens[0], this.mark, true);
  }
  goPiece() {
    const piece = this.sheet.pieces[Number(this.root.querySelector("[data-piece]").value)], screen = this.screens[0].element;
    this.goTo(piece.xMm + piece.widthMm / 2, piece.yMm + piece.heightMm / 2, 0.9 * Math.min(screen.clientWidth / piece.widthMm, screen.clientHeight / piece.heightMm));
  }
  goPlace() {
    const form = this.root.querySelector("[data-place-form]"), x = form.elements.x.valueAsNumber, y = form.elements.y.valueAsNumber;
    if (Number.isFinite(x) && Number.isFinite(y)) this.goTo(x, y, Math.max(this.view.pxPerMm, 96 / 25.4));
  }

  // What is under the pointer is written beside the picture; what is pressed or asked for by Enter is said as well.
  over(one, x, y) {
    clearTimeout(this.hovering);
    this.hovering = setTimeout(() => this.ask(one, one.tiles.toMm(x, y), false), HOVER_MS);
  }
  pick(one, x, y) {
    const mm = one.tiles.toMm(x, y);
    if (!one.tiles.pixelAt(...mm)) return;
    clearTimeout(this.hovering);
    this.mark = mm;
    this.redraw();
    this.ask(one, mm, true);
  }
  async ask(one, mm, aloud) {
    const pixel = one.tiles.pixelAt(...mm);
    if (!pixel) return;
    this.asking?.abort();
    this.asking = new AbortController();
    const level = Math.max(0, Math.min(this.sheet.levels - 1, Math.floor(Math.log2(1 / one.tiles.scale) + 1e-6)));
    try {
      const answer = await fetch(`${this.root.dataset.place}&x=${pixel[0]}&y=${pixel[1]}&level=${level}`, { signal: this.asking.signal });
      if (!answer.ok) throw new Error(`${answer.status}`);
      const { result } = await answer.json();
      this.write(result);
      if (aloud) this.say(this.words(result));
    } catch (why) {
      if (why.name !== "AbortError") this.say("What is at this place cannot be told: the shop does not answer.");
    }
  }
  words(p) {
    const inks = p.inks.filter((i) => i.percent > 0 || i.code > 0).map((i) => `${i.name}${this.layers > 1 ? `, layer ${i.layer},` : ""} ${i.percent < 0.5 ? "under 1" : number(i.percent, 0)} %`);
    const piece = p.piece ? `${p.piece.name}, copy ${p.piece.copy}, ${number(p.piece.xMm, 1)} mm from the left and ${number(p.piece.yMm, 1)} mm from below in its picture.` : "No piece.";
    return `${number(p.xMm, 2)} mm from the left, ${number(p.yMm, 2)} mm from the top. ${inks.length ? `${inks.join("; ")}; together ${number(p.totalPercent, 0)} %, ${number(p.totalMlPerM2, 2)} ml/m².` : "Bare: no ink."} ${piece}`;
  }
  get layers() { return this.sheet.planes.at(-1).layer; }
  write(p) {
    const side = 2 ** p.level, unit = p.isDots ? "dots" : "pixels";
    this.put("at", `${number(p.xMm, 2)} mm from the left, ${number(p.yMm, 2)} mm from the top`);
    this.put("file", `Column ${p.xPx}, row ${p.yPx}`);
    this.put("piece", p.piece ? `${p.piece.name}, copy ${p.piece.copy}` : "No piece: bare sheet");
    this.put("in-piece", p.piece ? `${number(p.piece.xMm, 1)} mm from the left, ${number(p.piece.yMm, 1)} mm from below` : "–");
    this.put("mean", p.level === 0 ? `Percent of the ${p.isDots ? "dot" : "pixel"} itself.` : `Percent is the mean of ${side} × ${side} ${unit}, as the picture shows it.`);
    for (const ink of p.inks) {
      const row = this.root.querySelector(`[data-ink="${ink.number}"]`);
      row.querySelector("[data-percent]").textContent = number(ink.percent, ink.percent < 10 ? 1 : 0);
      row.querySelector("[data-code]").textContent = ink.code;
      row.querySelector("[data-ml]").textContent = number(ink.mlPerM2, 2);
      row.querySelector("[data-fill]").setAttribute("width", Math.min(100, ink.percent));
    }
    this.put("total-percent", number(p.totalPercent, 0));
    this.put("total-ml", number(p.totalMlPerM2, 2));
    this.root.querySelector("[data-readout]").dataset.read = `${p.xPx},${p.yPx},${p.level}`;
  }
  put(name, words) { this.root.querySelector(`[data-read-${name}]`).textContent = words; }

  // Outlines of pieces with their names, and a bar of a round length that says how many dots it is.
  drawMore(c, one, colour) {
    const tiles = one.tiles, w = one.over.clientWidth, h = one.over.clientHeight;
    if (this.named.checked) for (const piece of this.sheet.pieces) this.outline(c, tiles, piece);
    this.bar(c, tiles, w, h, colour);
  }
  outline(c, tiles, p) {
    const [x0, y0] = tiles.toScreen(p.xMm, p.yMm), [x1, y1] = tiles.toScreen(p.xMm + p.widthMm, p.yMm + p.heightMm);
    if (x1 < 0 || y1 < 0 || x0 > c.canvas.clientWidth || y0 > c.canvas.clientHeight) return;
    for (const [stroke, dash] of [["#ffffff", []], ["#161616", [5, 5]]]) {
      c.strokeStyle = stroke;
      c.lineWidth = 1;
      c.setLineDash(dash);
      c.strokeRect(Math.round(x0) + 0.5, Math.round(y0) + 0.5, Math.round(x1 - x0) - 1, Math.round(y1 - y0) - 1);
    }
    c.setLineDash([]);
    c.font = "12px B612, sans-serif";
    const words = `${p.name} · ${p.copy}`, room = Math.min(x1, c.canvas.clientWidth) - Math.max(x0, 24);
    if (y1 - y0 < 22 || room < 26) return;
    const short = c.measureText(words).width + 10 <= room ? words : `${p.copy}`, wide = c.measureText(short).width + 10;
    const left = Math.max(x0 + 1, 24), top = Math.min(Math.max(y0 + 1, 24), y1 - 20);
    c.fillStyle = "#ffffff";
    c.fillRect(left, top, wide, 18);
    c.fillStyle = "#161616";
    c.textAlign = "left";
    c.textBaseline = "middle";
    c.fillText(short, left + 5, top + 9.5);
  }
  bar(c, tiles, w, h, colour) {
    const mm = steps((w < 420 ? 45 : 90) / tiles.view.pxPerMm), long = mm * tiles.view.pxPerMm, dots = mm / this.sheet.mmPerPx;
    const words = `${mm < 1 ? mm.toFixed(Math.ceil(-Math.log10(mm))) : mm} mm = ${dots < 100 ? number(dots, 1) : number(dots, 0)} ${this.sheet.isDots ? "dots" : "pixels"}`;
    c.font = "12px B612, sans-serif";
    const wide = Math.max(long, c.measureText(words).width) + 16, left = w - wide - 8, top = h - 40;
    c.fillStyle = colour("--sheet");
    c.fillRect(left, top, wide, 32);
    c.fillStyle = colour("--ink");
    c.textAlign = "left";
    c.textBaseline = "middle";
    c.fillText(words, left + 8, top + 11);
    c.fillRect(left + 8, top + 23, long, 2);
    c.fillRect(left + 8, top + 19, 2, 6);
    c.fillRect(left + 6 + long, top + 19, 2, 6);
  }
}

for (const root of document.querySelectorAll("[data-press-view]")) {
  try {
    root.pressView = new PressView(root);
  } catch (why) {
    // Without WebGL2 a still picture stands, with a note.
    root.dataset.live = "stills";
    const still = root.querySelector("[data-no-webgl]");
    still.hidden = false;
    still.append(make("img", { src: still.dataset.still, alt: still.dataset.stillAlt }));
  }
}
