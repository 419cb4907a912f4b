// One place of the piece: asks the shop what is there and writes spectra, colours, luminances, inks and differences beside the picture.
import { said } from "./light-maths.js";
import { mapPart } from "./table-over.js";

const SVG = "http://www.w3.org/2000/svg";
const element = (name, attributes = {}, ...inside) => {
  const made = name.startsWith("svg:") ? document.createElementNS(SVG, name.slice(4)) : document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) made.setAttribute(key, value);
  made.append(...inside);
  return made;
};
const lab = (l) => `${l.l.toFixed(1)}, ${l.a.toFixed(1)}, ${l.b.toFixed(1)}`.replaceAll("-", "−");

export class PointPanel {
  constructor(root) {
    this.root = root;
    this.panel = root.querySelector("[data-point-panel]");
    this.told = root.querySelector("[data-told]");
  }

  async show(table, one, [x, y]) {
    this.asked?.abort();
    const asked = this.asked = new AbortController();
    try {
      const answer = await fetch(`${one.element.dataset.point}?x=${x}&y=${y}`, { signal: asked.signal });
      if (!answer.ok) throw new Error(`${answer.status}`);
      const { result } = await answer.json();
      // A map that is still on its way is waited for: a place out of reach must say why.
      await one.maps.reason?.decode().catch(() => null);
      if (asked.signal.aborted) return;
      const reason = this.reasonAt(table, one, x, y);
      this.write(result, one, reason);
      this.told.textContent = this.words(result, reason);
    } catch (why) {
      if (why.name !== "AbortError") this.told.textContent = "What is at this place cannot be told: the shop does not answer.";
    }
  }

  words(p, reason) {
    const differs = p.day.deltaE00 === null || p.day.deltaE00 === undefined ? "" : ` Off the wish by ${p.day.deltaE00.toFixed(1)} by day, ${p.night.deltaE00.toFixed(1)} at night.`;
    return `${p.xMm.toFixed(0)} mm from the left, ${p.yMm.toFixed(0)} mm from the top. By day L* ${p.day.lab.l.toFixed(0)}, ${said(p.day.cdPerM2)} cd/m²; at night L* ${p.night.lab.l.toFixed(0)}, ${said(p.night.cdPerM2)} cd/m².${differs}${reason ? ` ${reason}` : ""}`;
  }

  // The reason stands in the map of reasons as a colour of its legend.
  reasonAt(table, one, x, y) {
    const map = one.maps.reason;
    if (!map?.complete || !map.naturalWidth) return null;
    const small = element("canvas", { width: 1, height: 1 }), c = small.getContext("2d", { willReadFrequently: true }), t = one.tiles.table;
    const [left, top, width, height] = mapPart(table, one, "reason");
    c.drawImage(map, left + Math.floor((x / t.widthPx) * width), top + Math.floor((y / t.heightPx) * height), 1, 1, 0, 0, 1, 1);
    const [r, g, b] = c.getImageData(0, 0, 1, 1).data;
    const key = [...this.root.querySelectorAll('[data-map-legend="reason"] [data-colour]')].find((k) => k.dataset.colour === `${r},${g},${b}`);
    return key && !("fine" in key.dataset) ? `Out of reach: ${key.textContent.trim()}.` : null;
  }

  write(p, one, reason) {
    const views = [["By day", p.day], ["Lamp on", p.night]];
    const rows = [
      ["Seen, L* a* b*", ...views.map(([, v]) => lab(v.lab))],
      ["Luminance, cd/m²", ...views.map(([, v]) => said(v.cdPerM2))],
    ];
    if (p.day.wish) {
      rows.push(["Wished, L* a* b*", ...views.map(([, v]) => lab(v.wish))]);
      rows.push(["Off the wish, ΔE00", ...views.map(([, v]) => v.deltaE00.toFixed(1))]);
    }
    const head = element("tr", {}, element("td"), ...views.map(([name, v]) => element("th", { scope: "col" }, this.swatch(v), name)));
    const table = element("table", {}, element("caption", {}, `${p.xMm.toFixed(1)} mm from the left, ${p.yMm.toFixed(1)} mm from the top; pixel ${p.xPx}, ${p.yPx}${one.element.dataset.name ? `; ${one.element.dataset.name}` : ""}`),
      element("thead", {}, head), element("tbody", {}, ...rows.map(([name, ...cells]) => element("tr", {}, element("th", { scope: "row" }, name), ...cells.map((t) => element("td", { class: "num" }, t))))));
    const told = element("div", { class: "stacked" }, table);
    if (reason) told.append(element("p", { class: "lt-reason" }, reason));
    const parts = [told];
    parts.push(this.inks(p), this.plot("Reflectance R(λ), room light", p.reflectance, p, 1), this.plot("Transmittance T(λ), lamp", p.transmittance, p, Math.max(0.1, Math.ceil(10 * Math.max(...p.transmittance)) / 10)));
    this.panel.replaceChildren(...parts);
  }

  swatch(v) {
    return element("svg:svg", { viewBox: "0 0 20 12", class: "lt-swatch", "aria-hidden": "true", focusable: "false" },
      element("svg:rect", { width: 20, height: 12, fill: `rgb(${v.red} ${v.green} ${v.blue})` }));
  }

  inks(p) {
    const list = element("dl", { class: "lt-inks" });
    for (const layer of p.layers) {
      list.append(element("dt", { class: "lt-layer" }, `${layer.number}. ${layer.group === "blockOut" ? "Block-out" : layer.group[0].toUpperCase() + layer.group.slice(1)}, ${layer.face === "first" ? "first" : "second"} surface`));
      for (const ink of layer.inks) {
        const bar = element("svg:svg", { viewBox: "0 0 100 8", preserveAspectRatio: "none", class: "lt-bar", "aria-hidden": "true", focusable: "false" },
          element("svg:rect", { class: "rail", width: 100, height: 8 }), element("svg:rect", { class: `fill look-${ink.role.toLowerCase()}`, width: Math.min(100, ink.percent), height: 8 }));
        list.append(element("dd", {}, element("span", {}, ink.name), bar, element("span", { class: "num" }, `${ink.percent.toFixed(0)} %`)));
      }
    }
    return list;
  }

  plot(title, values, p, most) {
    const w = 300, h = 132, left = 34, right = 8, top = 8, bottom = 26;
    const x = (i) => left + ((w - left - right) * i) / (values.length - 1), y = (v) => h - bottom - ((h - top - bottom) * Math.min(v, most)) / most;
    const line = values.map((v, i) => `${i ? "L" : "M"}${x(i).toFixed(1)} ${y(v).toFixed(1)}`).join("");
    const at = (nm) => x((nm - p.firstNm) / p.stepNm);
    const grid = [400, 500, 600, 700].map((nm) => `M${at(nm).toFixed(1)} ${top}V${h - bottom}`).join("") + [0.5, 1].map((v) => `M${left} ${y(v * most).toFixed(1)}H${w - right}`).join("");
    const word = (tx, ty, words, anchor) => element("svg:text", { class: "plot-tick", x: tx, y: ty, "text-anchor": anchor }, words);
    const peak = values.indexOf(Math.max(...values));
    const svg = element("svg:svg", { viewBox: `0 0 ${w} ${h}`, role: "img", "aria-label": `${title}: highest ${Math.max(...values).toFixed(3)} at ${p.firstNm + p.stepNm * peak} nm, lowest ${Math.min(...values).toFixed(3)}` },
      element("svg:path", { class: "plot-grid", d: grid }), element("svg:path", { class: "plot-axis", d: `M${left} ${top}V${h - bottom}H${w - right}` }),
      element("svg:path", { class: "plot-line", d: line }),
      ...[400, 500, 600, 700].map((nm) => word(at(nm), h - bottom + 14, `${nm}`, "middle")), word(w - right, h - 2, "nm", "end"),
      word(left - 5, y(0) + 4, "0", "end"), word(left - 5, y(most) + 4, `${most}`, "end"));
    return element("figure", { class: "plot lt-plot" }, element("figcaption", {}, element("strong", {}, title)), element("div", { class: "plate" }, svg));
  }
}
