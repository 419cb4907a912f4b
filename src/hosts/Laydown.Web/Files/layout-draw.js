// Draws a sheet to scale in the manner of a workshop drawing: pieces, offcuts, saw cuts, what is wrong, and how far the piece in hand lies from its neighbours.
const NS = "http://www.w3.org/2000/svg";

export const say = (mm) => String(Math.round(mm * 10) / 10).replace("-", "−");

export function shape(name, attributes = {}, ...inside) {
  const made = document.createElementNS(NS, name);
  for (const [key, value] of Object.entries(attributes)) if (value !== null) made.setAttribute(key, value);
  made.append(...inside);
  return made;
}

// Where millimetres of a sheet lie in its drawing. A sheet much longer than wide is drawn lying where there is room: its upper end to the right.
export class View {
  constructor(size, wide, high, frame, leastAcross = 0) {
    this.size = size;
    this.lying = size.heightMm > 1.3 * size.widthMm && wide > 560;
    const [w, h] = this.lying ? [size.heightMm, size.widthMm] : [size.widthMm, size.heightMm];
    this.k = Math.max(Math.min((wide - frame.left - frame.right) / w, (high - frame.top - frame.bottom) / h), leastAcross / Math.min(w, h));
    [this.left, this.top] = [frame.left, frame.top];
    [this.wide, this.high] = [w * this.k, h * this.k];
    [this.width, this.height] = [this.wide + frame.left + frame.right, this.high + frame.top + frame.bottom];
  }
  rect(x, y, w, h) {
    const k = this.k;
    return this.lying
      ? { x: this.left + y * k, y: this.top + x * k, w: h * k, h: w * k }
      : { x: this.left + x * k, y: this.top + (this.size.heightMm - y - h) * k, w: w * k, h: h * k };
  }
  point(x, y) { const r = this.rect(x, y, 0, 0); return [r.x, r.y]; }
  mm(px, py) {
    return this.lying
      ? [(py - this.top) / this.k, (px - this.left) / this.k]
      : [(px - this.left) / this.k, this.size.heightMm - (py - this.top) / this.k];
  }
  // A step of the screen, right and up, as a step on the sheet.
  step(right, up) { return this.lying ? [-up, right] : [right, up]; }
}

// Where a point of a piece's picture lies on its sheet, mm: the picture is turned counter-clockwise, its printed rectangle lies at the spot.
function lying(spot, x, y) {
  const { xMm, yMm, widthMm: w, heightMm: h } = spot;
  return [[xMm + x, yMm + y], [xMm + w - y, yMm + x], [xMm + w - x, yMm + h - y], [xMm + y, yMm + h - x]][(spot.angle / 90) % 4];
}

// The contour a piece is cut to, as path data of the drawing; null for a plain rectangle.
export function contourOf(view, spot, piece) {
  if (!piece?.rings) return null;
  const fixed = (v) => Math.round(v * 10) / 10;
  return piece.rings.map((ring) => {
    let d = "";
    for (let i = 0; i < ring.length; i += 2) {
      const [px, py] = view.point(...lying(spot, ring[i], ring[i + 1]));
      d += `${i ? "L" : "M"}${fixed(px)} ${fixed(py)}`;
    }
    return `${d}Z`;
  }).join("");
}

// The point of a contour that is farthest from its edges, and that distance, mm of the picture: there is room for a name.
export function roomiest(rings) {
  const flat = rings.flat(), xs = flat.filter((_, i) => i % 2 === 0), ys = flat.filter((_, i) => i % 2 === 1);
  const box = [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)], edges = [];
  for (const ring of rings) for (let i = 0, j = ring.length - 2; i < ring.length; j = i, i += 2) edges.push([ring[j], ring[j + 1], ring[i], ring[i + 1]]);
  const depth = (x, y) => {
    let inside = false, least = Infinity;
    for (const [ax, ay, bx, by] of edges) {
      if ((ay > y) !== (by > y) && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) inside = !inside;
      const long = (bx - ax) ** 2 + (by - ay) ** 2, t = long ? Math.max(0, Math.min(1, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / long)) : 0;
      least = Math.min(least, Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay)));
    }
    return inside ? least : -least;
  };
  let best = { x: (box[0] + box[2]) / 2, y: (box[1] + box[3]) / 2, r: -Infinity };
  for (let step = 0, half = [(box[2] - box[0]) / 2, (box[3] - box[1]) / 2]; step < 3; step++, half = half.map((h) => h / 6)) {
    const from = best;
    for (let i = -8; i <= 8; i++) for (let j = -8; j <= 8; j++) {
      const [x, y] = [from.x + (half[0] * i) / 8, from.y + (half[1] * j) / 8], r = depth(x, y);
      if (r > best.r) best = { x, y, r };
    }
  }
  return best;
}

const rectOf = (view, r) => view.rect(r.xMm, r.yMm, r.widthMm, r.heightMm);
const box = (r, className, more = {}) => shape("rect", { x: r.x, y: r.y, width: Math.max(0, r.w), height: Math.max(0, r.h), class: className, ...more });

function text(x, y, words, className, anchor = "middle", turn = 0) {
  return shape("text", { x, y, class: className, "text-anchor": anchor, transform: turn ? `rotate(${turn} ${x} ${y})` : null }, words);
}

// A dimension line between two places of the drawing with the oblique ticks of a workshop drawing.
function dimension([x1, y1], [x2, y2], words, className) {
  const level = Math.abs(y2 - y1) < Math.abs(x2 - x1);
  const tick = (x, y) => `M${x - 3} ${y + 3}l6 -6`;
  const g = shape("g", { class: className }, shape("path", { d: `M${x1} ${y1}L${x2} ${y2}${tick(x1, y1)}${tick(x2, y2)}` }));
  const [x, y] = [(x1 + x2) / 2, (y1 + y2) / 2];
  g.append(level ? text(x, y - 5, words, "hl-figure") : text(x + 5, y + 4, words, "hl-figure", "start"));
  return g;
}

function labelled(r, spot, small, inContour = false) {
  const name = `${spot.name} · ${spot.copy}`, size = `${say(spot.widthMm)} × ${say(spot.heightMm)}`;
  const level = r.w >= 84 || r.w >= r.h;
  const room = (level ? r.w : r.h) - 10, deep = level ? r.h : r.w;
  if (small || room < (inContour ? 8 : 26) || deep < 14) return [];
  const fits = Math.floor(room / 6.6);
  const line = name.length <= fits ? name : fits < 8 || (inContour && fits < 12) ? String(spot.copy) : `${spot.name.slice(0, Math.max(1, fits - String(spot.copy).length - 4)).trimEnd()}… · ${spot.copy}`;
  const [cx, cy] = [r.x + r.w / 2, r.y + r.h / 2], two = deep >= 36 && size.length <= fits;
  const wide = Math.max(line.length, two ? size.length : 0) * 6.6 + 8, high = two ? 32 : 17, turn = level ? 0 : -90;
  const back = box({ x: cx - wide / 2, y: cy - high / 2, w: wide, h: high }, "hl-label", { transform: turn ? `rotate(${turn} ${cx} ${cy})` : null });
  const at = (dy) => (level ? [cx, cy + dy] : [cx + dy, cy]);
  const lines = [text(...at(two ? -2 : 4), line, "hl-name", "middle", turn)];
  if (two) lines.push(text(...at(12), size, "hl-figure", "middle", turn));
  return [back, ...lines];
}

// What is printed of a piece, within its room for hems, pockets and labels: the room is told at the edges of the upright picture.
function printedOf(spot, piece) {
  const around = piece?.around;
  if (!around) return spot;
  let { leftMm: l, bottomMm: b, rightMm: r, topMm: t } = around;
  for (let i = 0; i < (spot.angle / 90) % 4; i++) [l, b, r, t] = [t, l, b, r];
  return { ...spot, xMm: spot.xMm + l, yMm: spot.yMm + b, widthMm: spot.widthMm - l - r, heightMm: spot.heightMm - b - t };
}

function pieceOf(view, whole, index, options) {
  const spot = printedOf(whole, options.pieces.get(whole.pieceId)), r = rectOf(view, spot), piece = options.pieces.get(spot.pieceId), contour = contourOf(view, spot, piece);
  const area = (className) => (contour ? shape("path", { d: contour, class: className, "fill-rule": "evenodd" }) : box(r, className));
  const g = shape("g", { class: `hl-piece${index === options.chosen ? " chosen" : ""}${spot.locked ? " locked" : ""}`, "data-spot": index }, area("hl-paper"));
  if (spot.widthMm < whole.widthMm || spot.heightMm < whole.heightMm) g.append(box(rectOf(view, whole), "hl-room"));
  if (options.pictures && piece.symbol) g.append(pictureOf(view, spot, piece, r, contour, index, options));
  g.append(area("hl-edge"));

  // Within a contour there is room for name and nail where it is widest.
  const within = contour ? widest(view, spot, piece) : r;
  g.append(upMark(within, (spot.angle / 90 + (view.lying ? 3 : 0)) % 4));
  const nails = contour ? [[within.x + within.w / 2, within.y + within.h - 6]] : [[r.x + 7, r.y + 7], [r.x + r.w - 7, r.y + r.h - 7]];
  if (spot.locked) for (const [x, y] of nails) g.append(nail(x, y, Math.min(within.w, within.h)));
  g.append(...labelled(within, spot, options.small, Boolean(contour)));
  return g;
}

// The picture is laid as the piece is printed, then turned about the middle of its place; printed mirrored, it is seen mirrored.
function pictureOf(view, spot, piece, r, contour, index, options) {
  const [w, h] = [piece.printed.widthMm * view.k, piece.printed.heightMm * view.k], turn = (view.lying ? 90 : 0) - spot.angle;
  const flip = options.mirrored ? " scale(-1 1)" : "";
  const use = shape("use", { href: `#${piece.symbol}`, x: -w / 2, y: -h / 2, width: w, height: h, transform: `translate(${r.x + r.w / 2} ${r.y + r.h / 2}) rotate(${turn})${flip}` });
  if (!contour) return use;
  const clip = `hl-clip-${options.drawing}-${index}`;
  return shape("g", {}, shape("clipPath", { id: clip }, shape("path", { d: contour, "clip-rule": "evenodd" })), shape("g", { "clip-path": `url(#${clip})` }, use));
}

// The square about the roomiest point of a contour, on the drawing.
function widest(view, spot, piece) {
  const [x, y] = view.point(...lying(spot, piece.room.x, piece.room.y)), half = Math.max(2, piece.room.r * view.k * 0.9);
  return { x: x - half, y: y - half, w: 2 * half, h: 2 * half };
}

// A small triangle at the picture's upper edge; quarters are counter-clockwise.
function upMark(r, quarters) {
  const s = Math.min(6, r.w / 5, r.h / 5), [cx, cy] = [r.x + r.w / 2, r.y + r.h / 2];
  const d = [`M${cx} ${r.y + 1}l${-s} ${s * 1.2}h${2 * s}Z`, `M${r.x + 1} ${cy}l${s * 1.2} ${-s}v${2 * s}Z`, `M${cx} ${r.y + r.h - 1}l${-s} ${-s * 1.2}h${2 * s}Z`, `M${r.x + r.w - 1} ${cy}l${-s * 1.2} ${-s}v${2 * s}Z`][quarters];
  return shape("path", { class: "hl-up", d });
}

// A locked piece is nailed down at two corners.
function nail(x, y, room) {
  const s = Math.min(5, room / 5);
  return shape("g", { class: "hl-nail" }, shape("circle", { cx: x, cy: y, r: s }), shape("path", { d: `M${x - s * 0.6} ${y}h${s * 1.2}M${x} ${y - s * 0.6}v${s * 1.2}` }));
}

function conflictsOf(view, conflicts, small) {
  const marks = [];
  for (const one of conflicts) {
    const r = rectOf(view, one.where), grown = { x: r.x - 2, y: r.y - 2, w: r.w + 4, h: r.h + 4 };
    marks.push(box(grown, `hl-conflict ${one.severity}`, { fill: `url(#hl-${one.severity === "stop" ? "stop" : "warn"})` }));
    if (small) continue;
    const [x, y] = [Math.max(12, Math.min(view.width - 12, r.x + r.w / 2)), Math.max(12, Math.min(view.height - 12, r.y + r.h / 2))];
    marks.push(shape("g", { class: `hl-badge ${one.severity}` }, shape("circle", { cx: x, cy: y, r: 10 }), text(x, y + 4, String(one.number), "hl-no")));
  }
  return marks;
}

// Hatches and pictures of pieces, once for all drawings of the page.
export function shared(pieces) {
  const defs = shape("defs", {}, hatch("hl-stop", 45), hatch("hl-warn", 135), hatch("hl-rest", 135));
  for (const piece of pieces.values()) {
    if (!piece.picture) continue;
    const whole = piece.whole ?? piece.printed, part = piece.part ?? { xMm: 0, yMm: 0, ...piece.printed };
    const seen = `${part.xMm} ${whole.heightMm - part.yMm - part.heightMm} ${part.widthMm} ${part.heightMm}`;
    defs.append(shape("symbol", { id: piece.symbol, viewBox: seen, preserveAspectRatio: "none" },
      shape("image", { href: piece.picture, width: whole.widthMm, height: whole.heightMm, preserveAspectRatio: "xMidYMid slice" })));
  }
  return shape("svg", { width: 0, height: 0, class: "hl-shared", "aria-hidden": "true" }, defs);
}

function hatch(id, turn) {
  return shape("pattern", { id, width: 6, height: 6, patternUnits: "userSpaceOnUse", patternTransform: `rotate(${turn})` }, shape("path", { d: "M0 0V6", class: id }));
}

// The lengths from the piece in hand to what it meets first on each side.
function clearancesOf(view, spot, clearances) {
  const middleX = spot.xMm + spot.widthMm / 2, middleY = spot.yMm + spot.heightMm / 2, right = spot.xMm + spot.widthMm, top = spot.yMm + spot.heightMm;
  const ends = { left: [[spot.xMm, middleY], (mm) => [spot.xMm - mm, middleY]], right: [[right, middleY], (mm) => [right + mm, middleY]], below: [[middleX, spot.yMm], (mm) => [middleX, spot.yMm - mm]], above: [[middleX, top], (mm) => [middleX, top + mm]] };
  return clearances.filter((c) => c.mm > 0.05).map((c) => dimension(view.point(...ends[c.side][0]), view.point(...ends[c.side][1](c.mm)), say(c.mm), "hl-clear"));
}

export function drawSheet(sheet, view, options) {
  const svg = shape("svg", { viewBox: `0 0 ${view.width} ${view.height}`, width: view.width, height: view.height, "aria-hidden": "true", class: options.small ? "hl-small" : "hl-large" });
  const whole = view.rect(0, 0, sheet.size.widthMm, sheet.size.heightMm);
  svg.append(box(whole, "hl-sheet"));
  const m = options.marginMm, lead = options.leadMm ?? m;
  svg.append(box(view.rect(m, lead, sheet.size.widthMm - 2 * m, Math.max(0, sheet.size.heightMm - 2 * lead)), "hl-margin"));
  for (const rest of sheet.offcuts) {
    const r = rectOf(view, rest);
    svg.append(box(r, "hl-offcut", { fill: "url(#hl-rest)" }));
    if (!options.small && r.w > 120 && r.h > 24) svg.append(box({ x: r.x + r.w / 2 - 62, y: r.y + r.h / 2 - 10, w: 124, h: 18 }, "hl-label"), text(r.x + r.w / 2, r.y + r.h / 2 + 4, `rest ${say(rest.widthMm)} × ${say(rest.heightMm)}`, "hl-figure"));
  }
  sheet.spots.forEach((spot, i) => { if (i !== options.chosen) svg.append(pieceOf(view, spot, i, options)); });
  const chosen = sheet.spots[options.chosen];
  if (chosen) svg.append(pieceOf(view, chosen, options.chosen, options));
  if (options.cuts) for (const cut of sheet.cuts) {
    const [x1, y1] = view.point(cut.from.xMm, cut.from.yMm), [x2, y2] = view.point(cut.to.xMm, cut.to.yMm);
    svg.append(shape("path", { class: `hl-cut stage-${Math.min(3, cut.stage)}`, d: `M${x1} ${y1}L${x2} ${y2}` }), shape("circle", { class: "hl-cut-end", cx: x1, cy: y1, r: 7 }), text(x1, y1 + 3.5, String(cut.stage), "hl-stage"));
  }
  if (chosen && !options.small) svg.append(...clearancesOf(view, chosen, options.clearances));
  svg.append(...conflictsOf(view, options.conflicts, options.small));
  if (!options.small) {
    const { left, top, wide, high } = view, [across, down] = view.lying ? [sheet.size.heightMm, sheet.size.widthMm] : [sheet.size.widthMm, sheet.size.heightMm];
    svg.append(dimension([left, top - 9], [left + wide, top - 9], `${say(across)} mm`, "hl-dim"));
    svg.append(shape("path", { class: "hl-dim", d: `M${left - 9} ${top}V${top + high}` }), text(left - 13, top + high / 2, `${say(down)} mm`, "hl-figure", "middle", -90));
    const [ox, oy] = view.point(0, 0);
    svg.append(shape("circle", { class: "hl-origin", cx: ox, cy: oy, r: 3.5 }));
  }
  return svg;
}
