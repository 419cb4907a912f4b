// What lies over the picture: millimetre scales along two edges, the line the piece is cut at, maps, places, the cross hair of the keyboard.
import { SCALES as BAND } from "./tile-view.js";

export const steps = (mmPerLabel) => {
  const ten = 10 ** Math.floor(Math.log10(mmPerLabel)), part = mmPerLabel / ten;
  return ten * (part <= 1 ? 1 : part <= 2 ? 2 : part <= 5 ? 5 : 10);
};

export const drawOver = (table, one) => {
  const canvas = one.over, tiles = one.tiles, w = canvas.clientWidth, h = canvas.clientHeight, ratio = tiles.ratio;
  if (canvas.width !== Math.round(w * ratio) || canvas.height !== Math.round(h * ratio)) { canvas.width = Math.round(w * ratio); canvas.height = Math.round(h * ratio); }
  const c = canvas.getContext("2d"), style = getComputedStyle(one.element);
  const colour = (name) => style.getPropertyValue(name).trim();
  c.setTransform(ratio, 0, 0, ratio, 0, 0);
  c.clearRect(0, 0, w, h);
  map(c, table, one);
  cutLine(c, tiles);
  table.drawMore?.(c, one, colour);
  for (const pin of table.pins) place(c, tiles, [pin.x, pin.y], `${pin.number}`, pin.done);
  if (table.mark) place(c, tiles, table.mark, null, false);
  if (document.activeElement === one.element && table.byKeys) crossHair(c, tiles);
  scales(c, tiles, w, h, colour);
};

const map = (c, table, one) => {
  const picture = table.map ? one.maps[table.map] : null;
  if (!picture?.complete || picture.naturalWidth === 0) return;
  const t = one.tiles.table, [x0, y0] = one.tiles.toScreen(-t.bleedMm, -t.bleedMm);
  const unit = one.tiles.view.pxPerMm * t.mmPerPx;
  c.save();
  c.globalAlpha = Number(table.root.querySelector("[data-map-strength]")?.value ?? 70) / 100;
  c.imageSmoothingEnabled = false;
  c.drawImage(picture, ...mapPart(table, one), x0, y0, t.widthPx * unit, t.heightPx * unit);
  c.restore();
};

// A map's file has a margin of 12 pixels and its legend below in lines of 24: only the map itself is laid over.
export const mapPart = (table, one, name = table.map) => {
  const picture = one.maps[name], t = one.tiles.table;
  const keys = table.root.querySelectorAll(`[data-map-legend="${name}"] li`).length;
  const height = picture.naturalHeight - 36 - 24 * (keys + 1);
  const width = picture.naturalWidth > 520 ? picture.naturalWidth - 24 : Math.min(picture.naturalWidth - 24, Math.round((height * t.widthPx) / t.heightPx));
  return [12, 12, width, height];
};

const cutLine = (c, tiles) => {
  const t = tiles.table.finishedMm, [x0, y0] = tiles.toScreen(0, 0), [x1, y1] = tiles.toScreen(t.widthMm, t.heightMm);
  if (!(tiles.table.bleedMm > 0)) return;
  for (const [stroke, dash] of [["#161616", []], ["#ffffff", [6, 4]]]) {
    c.strokeStyle = stroke;
    c.lineWidth = 1;
    c.setLineDash(dash);
    c.strokeRect(Math.round(x0) + 0.5, Math.round(y0) + 0.5, Math.round(x1 - x0) - 1, Math.round(y1 - y0) - 1);
  }
  c.setLineDash([]);
};

const place = (c, tiles, at, number, done) => {
  const [x, y] = tiles.toScreen(...at);
  const ring = (r, stroke, width) => { c.beginPath(); c.arc(x, y, r, 0, 2 * Math.PI); c.strokeStyle = stroke; c.lineWidth = width; c.stroke(); };
  if (number === null) {
    for (const [stroke, width] of [["#161616", 4], ["#ffffff", 2]]) {
      ring(9, stroke, width);
      c.beginPath();
      for (const [a, b] of [[-16, -9], [9, 16]]) { c.moveTo(x + a, y); c.lineTo(x + b, y); c.moveTo(x, y + a); c.lineTo(x, y + b); }
      c.stroke();
    }
    return;
  }
  c.beginPath();
  c.moveTo(x, y);
  c.lineTo(x - 7, y - 14);
  c.lineTo(x + 7, y - 14);
  c.closePath();
  c.moveTo(x + 13, y - 24);
  c.arc(x, y - 24, 13, 0, 2 * Math.PI);
  c.lineWidth = 3;
  c.strokeStyle = "#ffffff";
  c.stroke();
  c.fillStyle = done ? "#505050" : "#161616";
  c.fill();
  c.fillStyle = "#ffffff";
  c.font = "700 13px B612, sans-serif";
  c.textAlign = "center";
  c.textBaseline = "middle";
  c.fillText(done ? "✓" : number, x, y - 23.5);
};

const crossHair = (c, tiles) => {
  const x = Math.round(tiles.midX) + 0.5, y = Math.round(tiles.midY) + 0.5;
  for (const [stroke, width] of [["#161616", 3], ["#ffffff", 1]]) {
    c.strokeStyle = stroke;
    c.lineWidth = width;
    c.beginPath();
    for (const [a, b] of [[-26, -5], [5, 26]]) { c.moveTo(x + a, y); c.lineTo(x + b, y); c.moveTo(x, y + a); c.lineTo(x, y + b); }
    c.stroke();
  }
};

const scales = (c, tiles, w, h, colour) => {
  const unit = tiles.view.pxPerMm, label = steps(64 / unit), fine = label / (String(label / 10 ** Math.floor(Math.log10(label) + 1e-9)).startsWith("2") ? 4 : 5);
  c.fillStyle = colour("--sheet");
  c.fillRect(0, 0, w, BAND);
  c.fillRect(0, 0, BAND, h);
  c.strokeStyle = colour("--ink");
  c.fillStyle = colour("--ink");
  c.lineWidth = 1;
  c.font = "11px B612, sans-serif";
  c.textBaseline = "middle";
  c.beginPath();
  c.moveTo(BAND, BAND - 0.5);
  c.lineTo(w, BAND - 0.5);
  c.moveTo(BAND - 0.5, BAND);
  c.lineTo(BAND - 0.5, h);
  const write = (mm) => (label < 1 ? mm.toFixed(Math.ceil(-Math.log10(label))) : mm.toFixed(0)).replace("-", "−");
  const along = (from, to, at, tick, word) => {
    for (let i = Math.ceil(from / fine - 1e-9); i * fine <= to + 1e-9; i++) {
      const s = Math.round(at(i * fine)) + 0.5, whole = Math.abs(i * fine / label - Math.round(i * fine / label)) < 1e-6;
      if (s < BAND) continue;
      tick(s, whole ? 9 : 4);
      if (whole) word(s, write(i * fine));
    }
  };
  const [left, top] = tiles.toMm(0, 0), [right, bottom] = tiles.toMm(w, h);
  c.textAlign = "left";
  along(left, right, (mm) => tiles.toScreen(mm, 0)[0], (s, l) => { c.moveTo(s, BAND); c.lineTo(s, BAND - l); }, (s, t) => c.fillText(t, s + 3, 8));
  along(top, bottom, (mm) => tiles.toScreen(0, mm)[1], (s, l) => { c.moveTo(BAND, s); c.lineTo(BAND - l, s); }, (s, t) => {
    c.save();
    c.translate(8, s + 3);
    c.rotate(Math.PI / 2);
    c.fillText(t, 0, 0);
    c.restore();
  });
  c.stroke();
  c.fillStyle = colour("--sheet");
  c.fillRect(0, 0, BAND, BAND);
  c.fillStyle = colour("--quiet");
  c.textAlign = "center";
  c.fillText("mm", BAND / 2, BAND / 2);
};
