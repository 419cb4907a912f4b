// Shows a look: tiles of light by room and lamp from the server, blended in linear light by the graphics unit, moved and enlarged to its pixels.
import { adapting, encode } from "./light-maths.js";

const TILE = 256, MOST_TILES = 192, AT_ONCE = 6, MOST_PX = 32, GRID_FROM = 10;
export const SCALES = 22;
const VERTEX = `#version 300 es
in vec2 corner; uniform vec4 place; out vec2 uv;
void main() { uv = corner; vec2 p = place.xy + corner * place.zw; gl_Position = vec4(p.x * 2.0 - 1.0, 1.0 - p.y * 2.0, 0.0, 1.0); }`;
const FRAGMENT = `#version 300 es
precision highp float;
in vec2 uv; out vec4 shown;
uniform sampler2D roomTile, lampTile; uniform mat3 roomLight, lampLight; uniform vec2 pixels, grid;
float coded(float c) { return c <= 0.0031308 ? 12.92 * c : 1.055 * pow(c, 1.0 / 2.4) - 0.055; }
void main() {
  vec3 d = texture(roomTile, uv).rgb, n = texture(lampTile, uv).rgb;
  vec3 c = roomLight * (d * d) + lampLight * (n * n);
  // What the screen cannot show moves toward grey of the same luminance; brighter than white is white.
  float y = dot(c, vec3(0.2126, 0.7152, 0.0722));
  if (y >= 1.0) c = vec3(1.0);
  else {
    y = max(y, 0.0);
    float low = min(c.r, min(c.g, c.b)), high = max(c.r, max(c.g, c.b)), keep = 1.0;
    if (low < 0.0) keep = min(keep, y / max(y - low, 1e-9));
    if (high > 1.0) keep = min(keep, (1.0 - y) / max(high - y, 1e-9));
    c = clamp(vec3(y) + keep * (c - vec3(y)), 0.0, 1.0);
  }
  vec3 s = vec3(coded(c.r), coded(c.g), coded(c.b));
  if (grid.x > 0.0) {
    vec2 f = fract(uv * pixels) * grid;
    if (f.x < 1.0 || f.y < 1.0) s = mix(s, vec3(s.g > 0.5 ? 0.0 : 1.0), 0.28);
  }
  shown = vec4(s, 1.0);
}`;

const unfold = (bytes, rows, columns) => {
  const pixels = rows * columns, count = 6 * pixels;
  const out = [new Uint32Array(pixels), new Uint32Array(pixels)];
  for (let channel = 0; channel < 6; channel++) {
    const into = out[channel < 3 ? 0 : 1], shift = 10 * (channel % 3), low = channel * pixels;
    let above = 0;
    for (let y = 0, at = 0; y < rows; y++) {
      let code = above;
      for (let x = 0; x < columns; x++, at++) {
        const folded = bytes[low + at] | (bytes[count + low + at] << 8);
        code += folded & 1 ? -((folded + 1) >> 1) : folded >> 1;
        if (x === 0) above = code;
        into[at] |= code << shift;
      }
    }
  }
  return out;
};

export class TileView {
  // table: what the server says of the look; base: address of its tiles; view: centre in mm of the finished piece and CSS px per mm, shared by linked views.
  constructor(canvas, table, base, view) {
    Object.assign(this, { canvas, table, base, view, tiles: new Map(), waiting: 0, drawn: 0, tick: 0, light: { room: 0, lamp: 0, white: [1, 1, 1] } });
    this.gl = canvas.getContext("webgl2", { alpha: false, antialias: false, powerPreference: "high-performance" });
    if (!this.gl) throw new Error("no WebGL2");
    canvas.addEventListener("webglcontextlost", (e) => { e.preventDefault(); this.lost = true; });
    canvas.addEventListener("webglcontextrestored", () => { this.lost = false; this.tiles.clear(); this.whole = null; this.start(); this.ask(); });
    this.start();
  }

  start() {
    const gl = this.gl, program = gl.createProgram();
    for (const [kind, text] of [[gl.VERTEX_SHADER, VERTEX], [gl.FRAGMENT_SHADER, FRAGMENT]]) {
      const shader = gl.createShader(kind);
      gl.shaderSource(shader, text);
      gl.compileShader(shader);
      gl.attachShader(program, shader);
    }
    gl.linkProgram(program);
    if (!gl.getProgramParameter(program, gl.LINK_STATUS)) throw new Error(gl.getProgramInfoLog(program) ?? "no shader");
    gl.useProgram(program);
    const corners = gl.createBuffer();
    gl.bindBuffer(gl.ARRAY_BUFFER, corners);
    gl.bufferData(gl.ARRAY_BUFFER, new Float32Array([0, 0, 1, 0, 0, 1, 1, 1]), gl.STATIC_DRAW);
    const corner = gl.getAttribLocation(program, "corner");
    gl.enableVertexAttribArray(corner);
    gl.vertexAttribPointer(corner, 2, gl.FLOAT, false, 0, 0);
    this.at = Object.fromEntries(["place", "roomTile", "lampTile", "roomLight", "lampLight", "pixels", "grid"].map((n) => [n, gl.getUniformLocation(program, n)]));
    gl.uniform1i(this.at.roomTile, 0);
    gl.uniform1i(this.at.lampTile, 1);
  }

  // Pixels need not be square: press files may have other dots down than across.
  get downMm() { return this.table.mmPerPxDown ?? this.table.mmPerPx; }
  get ratio() { return Math.min(window.devicePixelRatio || 1, 3); }
  // Device pixels for each pixel of the look.
  get scale() { return this.view.pxPerMm * this.table.mmPerPx * this.ratio; }
  get mostPxPerMm() { return MOST_PX / (this.table.mmPerPx * this.ratio); }
  get leastPxPerMm() { return 0.5 * this.fitPxPerMm; }
  get fitPxPerMm() {
    const t = this.table, w = t.widthPx * t.mmPerPx, h = t.heightPx * this.downMm;
    return Math.max(1e-4, Math.min((this.canvas.clientWidth - 48) / w, (this.canvas.clientHeight - 48) / h));
  }

  // Middle of what the scales along the upper and left edge leave free.
  get midX() { return (this.canvas.clientWidth + SCALES) / 2; }
  get midY() { return (this.canvas.clientHeight + SCALES) / 2; }

  toMm(x, y) { return [this.view.x + (x - this.midX) / this.view.pxPerMm, this.view.y + (y - this.midY) / this.view.pxPerMm]; }
  toScreen(xMm, yMm) { return [this.midX + (xMm - this.view.x) * this.view.pxPerMm, this.midY + (yMm - this.view.y) * this.view.pxPerMm]; }
  pixelAt(xMm, yMm) {
    const t = this.table, x = Math.floor((xMm + t.bleedMm) / t.mmPerPx), y = Math.floor((yMm + t.bleedMm) / this.downMm);
    return x >= 0 && y >= 0 && x < t.widthPx && y < t.heightPx ? [x, y] : null;
  }

  // Another picture of the same size at the same place.
  show(table, base) {
    for (const tile of this.tiles.values()) {
      tile.stop?.abort();
      if (tile.room) { this.gl.deleteTexture(tile.room); this.gl.deleteTexture(tile.lamp); }
    }
    Object.assign(this, { table, base, tiles: new Map(), failed: 0, complete: false });
    this.ask();
  }

  setLight(room, lamp, white) { this.light = { room, lamp, white }; this.ask(); }
  ask() {
    if (this.asked) return;
    this.asked = true;
    requestAnimationFrame(() => { this.asked = false; this.draw(); });
  }

  draw() {
    const gl = this.gl, canvas = this.canvas, t = this.table;
    if (this.lost || canvas.clientWidth === 0) return;
    const width = Math.max(1, Math.round(canvas.clientWidth * this.ratio)), height = Math.max(1, Math.round(canvas.clientHeight * this.ratio));
    if (canvas.width !== width || canvas.height !== height) { canvas.width = width; canvas.height = height; }
    gl.viewport(0, 0, width, height);

    // The wall around the piece is grey and stands in the room's light: it goes dark with it.
    const { room, lamp, white } = this.light, adapt = adapting(white);
    const wall = encode(0.2 * room * (0.2126 * (adapt[0] + adapt[1] + adapt[2]) + 0.7152 * (adapt[3] + adapt[4] + adapt[5]) + 0.0722 * (adapt[6] + adapt[7] + adapt[8])));
    gl.clearColor(wall, wall, wall, 1);
    gl.clear(gl.COLOR_BUFFER_BIT);
    const { roomMost, lampMost } = this.whole?.size ?? t;
    gl.uniformMatrix3fv(this.at.roomLight, true, adapt.map((v) => v * room * roomMost));
    gl.uniformMatrix3fv(this.at.lampLight, true, adapt.map((v) => v * lamp * lampMost));
    if (this.whole) {
      this.drawWhole(width, height);
      this.complete = true;
      this.drawn++;
      this.onDraw?.();
      return;
    }

    const level = Math.max(0, Math.min(t.levels - 1, Math.floor(Math.log2(1 / this.scale) + 1e-6)));
    const wanted = this.visible(level), missing = wanted.filter((k) => !this.tiles.get(k.key)?.room);
    if (missing.length > 0) for (let above = t.levels - 1; above > level; above--) for (const k of this.visible(above)) this.drawTile(k, width, height);
    for (const k of wanted) this.drawTile(k, width, height);
    this.fetchMissing(level, missing);
    this.complete = missing.length === 0;
    this.drawn++;
    this.onDraw?.();
  }

  // Tiles of a level that the window shows, nearest to its middle first.
  visible(level) {
    const t = this.table, { clientWidth: w, clientHeight: h } = this.canvas, of = t.mmPerPx * 2 ** level, side = TILE * of, ofDown = this.downMm * 2 ** level, sideDown = TILE * ofDown;
    const [left, top] = this.toMm(0, 0), [right, bottom] = this.toMm(w, h);
    const lw = this.sideAt(t.widthPx, level), lh = this.sideAt(t.heightPx, level);
    const first = (mm, most, each) => Math.max(0, Math.min(most, Math.floor((mm + t.bleedMm) / each)));
    const lastColumn = Math.floor((lw - 1) / TILE), lastRow = Math.floor((lh - 1) / TILE), list = [];
    if (right < -t.bleedMm || bottom < -t.bleedMm) return list;
    for (let row = first(top, lastRow, sideDown); row <= first(bottom, lastRow, sideDown); row++)
      for (let column = first(left, lastColumn, side); column <= first(right, lastColumn, side); column++)
        list.push({ key: `${level}/${column}-${row}`, level, column, row, columns: Math.min(TILE, lw - column * TILE), rows: Math.min(TILE, lh - row * TILE), of, ofDown });
    const middle = (k) => Math.hypot((k.column + 0.5) * side - t.bleedMm - this.view.x, (k.row + 0.5) * sideDown - t.bleedMm - this.view.y);
    return list.sort((a, b) => middle(a) - middle(b));
  }
  sideAt(side, level) { for (let i = 0; i < level; i++) side = Math.ceil(side / 2); return side; }

  drawTile(k, width, height) {
    const tile = this.tiles.get(k.key), gl = this.gl;
    if (!tile?.room) return;
    tile.used = ++this.tick;
    const t = this.table, unit = this.view.pxPerMm * this.ratio;
    // The picture ends where its own pixels end, also where halving has rounded up.
    const mmX = (c) => Math.min(c * TILE * k.of, t.widthPx * t.mmPerPx) - t.bleedMm, mmY = (r) => Math.min(r * TILE * k.ofDown, t.heightPx * this.downMm) - t.bleedMm;
    const midX = this.midX * this.ratio, midY = this.midY * this.ratio;
    const x0 = midX + (mmX(k.column) - this.view.x) * unit, x1 = midX + (mmX(k.column + 1) - this.view.x) * unit;
    const y0 = midY + (mmY(k.row) - this.view.y) * unit, y1 = midY + (mmY(k.row + 1) - this.view.y) * unit;
    gl.uniform4f(this.at.place, x0 / width, y0 / height, (x1 - x0) / width, (y1 - y0) / height);
    gl.uniform2f(this.at.pixels, k.columns, k.rows);
    const lines = k.level === 0 && this.scale >= GRID_FROM;
    gl.uniform2f(this.at.grid, lines ? this.scale : 0, lines ? unit * this.downMm : 0);
    const filter = k.level === 0 && this.scale >= 1 ? gl.NEAREST : gl.LINEAR;
    [tile.room, tile.lamp].forEach((texture, unitNo) => {
      gl.activeTexture(gl.TEXTURE0 + unitNo);
      gl.bindTexture(gl.TEXTURE_2D, texture);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, filter);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, filter);
    });
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
  }

  // A preview: the whole picture in one piece, for as long as it is set.
  async showWhole(size, body) {
    const bytes = new Uint8Array(await new Response(body.pipeThrough(new DecompressionStream("deflate"))).arrayBuffer());
    const k = { rows: size.heightPx, columns: size.widthPx }, [room, lamp] = unfold(bytes, k.rows, k.columns);
    this.hideWhole();
    this.whole = { size, room: this.texture(room, k), lamp: this.texture(lamp, k) };
    this.ask();
  }
  hideWhole() {
    if (this.whole) { this.gl.deleteTexture(this.whole.room); this.gl.deleteTexture(this.whole.lamp); }
    this.whole = null;
    this.ask();
  }
  drawWhole(width, height) {
    const gl = this.gl, t = this.table, [x0, y0] = this.toScreen(-t.bleedMm, -t.bleedMm), unit = this.view.pxPerMm * t.mmPerPx;
    const { clientWidth: w, clientHeight: h } = this.canvas;
    gl.uniform4f(this.at.place, x0 / w, y0 / h, (t.widthPx * unit) / w, (t.heightPx * unit) / h);
    gl.uniform2f(this.at.grid, 0, 0);
    [this.whole.room, this.whole.lamp].forEach((texture, unitNo) => {
      gl.activeTexture(gl.TEXTURE0 + unitNo);
      gl.bindTexture(gl.TEXTURE_2D, texture);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MAG_FILTER, gl.LINEAR);
      gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_MIN_FILTER, gl.LINEAR);
    });
    gl.drawArrays(gl.TRIANGLE_STRIP, 0, 4);
  }

  fetchMissing(level, missing) {
    // What has left the window is not worth waiting for; the smallest level comes first of all, so that there is always something to see.
    const inView = new Set(missing.map((k) => k.key));
    for (const [key, tile] of this.tiles) if (tile.stop && !inView.has(key) && !key.startsWith(`${this.table.levels - 1}/`)) tile.stop.abort();
    const first = this.visible(this.table.levels - 1).filter((k) => !this.tiles.has(k.key));
    for (const k of [...first, ...missing]) {
      if (this.waiting >= AT_ONCE) return;
      if (!this.tiles.has(k.key)) this.fetchTile(k);
    }
  }

  async fetchTile(k) {
    const stop = new AbortController(), tiles = this.tiles;
    tiles.set(k.key, { stop });
    this.waiting++;
    try {
      const answer = await fetch(`${this.base}/tiles/${this.table.mark}/${k.level}/${k.column}-${k.row}`, { signal: stop.signal });
      if (!answer.ok) throw new Error(`${answer.status}`);
      const bytes = new Uint8Array(await new Response(answer.body.pipeThrough(new DecompressionStream("deflate"))).arrayBuffer());
      const [room, lamp] = unfold(bytes, k.rows, k.columns);
      if (tiles !== this.tiles) return;
      this.tiles.set(k.key, { room: this.texture(room, k), lamp: this.texture(lamp, k), used: ++this.tick });
      this.trim();
      this.failed = 0;
    } catch (why) {
      tiles.delete(k.key);
      if (why.name !== "AbortError") {
        // Asked for again a little later, each time after a longer wait, at most five times.
        this.failed = (this.failed ?? 0) + 1;
        if (this.failed > 5) { this.onFail?.(); return; }
        await new Promise((go) => setTimeout(go, 300 * 2 ** this.failed));
      }
    } finally {
      this.waiting--;
      this.ask();
    }
  }

  texture(codes, k) {
    const gl = this.gl, texture = gl.createTexture();
    gl.bindTexture(gl.TEXTURE_2D, texture);
    gl.texImage2D(gl.TEXTURE_2D, 0, gl.RGB10_A2, k.columns, k.rows, 0, gl.RGBA, gl.UNSIGNED_INT_2_10_10_10_REV, codes);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_S, gl.CLAMP_TO_EDGE);
    gl.texParameteri(gl.TEXTURE_2D, gl.TEXTURE_WRAP_T, gl.CLAMP_TO_EDGE);
    return texture;
  }

  trim() {
    const kept = [...this.tiles].filter(([key, t]) => t.room && !key.startsWith(`${this.table.levels - 1}/`));
    kept.sort((a, b) => a[1].used - b[1].used);
    for (const [key, tile] of kept.slice(0, Math.max(0, kept.length - MOST_TILES))) {
      this.gl.deleteTexture(tile.room);
      this.gl.deleteTexture(tile.lamp);
      this.tiles.delete(key);
    }
  }
}
