// Dragging by mouse, pen and finger. A finger takes a piece by a tap first, so that the page can still be scrolled over the drawing.
import { contourOf, shape } from "./layout-draw.js";

const STARTS_PX = 4, REACH_PX = 10, EDGE_PX = 48;

export class LayoutPointer {
  constructor(desk) {
    this.desk = desk;
    const bench = desk.bench;
    bench.addEventListener("pointerdown", (e) => this.down(e));
    bench.addEventListener("pointermove", (e) => this.move(e));
    bench.addEventListener("pointerup", (e) => this.up(e));
    bench.addEventListener("pointercancel", () => this.cancel());
  }

  spotOf(event) {
    const piece = event.target.closest?.("[data-spot]");
    return piece ? Number(piece.dataset.spot) : -1;
  }
  place(event) {
    const box = this.desk.bench.firstElementChild.getBoundingClientRect();
    return this.desk.view.mm(event.clientX - box.left, event.clientY - box.top);
  }

  async down(event) {
    const desk = this.desk;
    if (event.button !== 0 || !desk.free) return;
    if (desk.held) { desk.look(desk.sheet, this.spotOf(event)); return; }
    desk.bench.focus({ preventScroll: true });
    const spot = this.spotOf(event), byFinger = event.pointerType === "touch";
    this.tap = { spot, id: event.pointerId, byFinger };
    if (spot < 0 || (byFinger && spot !== desk.spot)) return;
    event.preventDefault();
    const held = desk.here.spots[spot];
    desk.bench.setPointerCapture(event.pointerId);
    this.drag = { id: event.pointerId, spot, from: this.place(event), at: [held.xMm, held.yMm], px: [event.clientX, event.clientY], scrolled: window.scrollY, began: false, sheets: desk.now.sheets, locked: held.locked };
  }
  move(event) {
    const drag = this.drag, desk = this.desk;
    if (!drag || event.pointerId !== drag.id) return;
    drag.latest = event;
    const by = [event.clientX - drag.px[0], event.clientY - drag.px[1] + window.scrollY - drag.scrolled];
    if (!drag.began && Math.hypot(...by) < STARTS_PX) return;
    if (drag.locked) {
      this.cancel();
      desk.look(desk.sheet, drag.spot).then(() => desk.tell("That piece is locked; let it go before you move it."));
      return;
    }
    drag.began = true;
    const mm = this.place(event);
    drag.wanted = [0, 1].map((i) => Math.round(drag.at[i] + mm[i] - drag.from[i]));
    const piece = desk.bench.querySelector(`[data-spot="${drag.spot}"]`);
    piece?.classList.add("dragged");
    piece?.setAttribute("transform", `translate(${by[0]} ${by[1]})`);
    this.over(event);
    this.roll(drag);
    desk.talk.glance({ sheets: drag.sheets, edit: this.edit(drag) }, (answer) => { if (this.drag === drag) this.shadow(drag, answer); });
  }
  // Held near the upper or lower edge of the window, a piece takes the page along, so that boards out of sight are reached.
  roll(drag) {
    if (drag.rolling) return;
    const step = () => {
      const { clientY: y } = drag.latest, within = y >= 0 && y <= window.innerHeight;
      const by = !within ? 0 : y < EDGE_PX ? y - EDGE_PX : y > window.innerHeight - EDGE_PX ? y - window.innerHeight + EDGE_PX : 0;
      drag.rolling = this.drag === drag && by !== 0;
      if (!drag.rolling) return;
      const before = window.scrollY;
      window.scrollBy(0, Math.max(-24, Math.min(24, by / 2)));
      if (window.scrollY !== before) this.move(drag.latest);
      requestAnimationFrame(step);
    };
    step();
  }
  edit(drag) {
    return { verb: "move", sheet: this.desk.sheet, spot: drag.spot, xMm: drag.wanted[0], yMm: drag.wanted[1], reachMm: Math.min(60, REACH_PX / this.desk.view.k) };
  }

  // Where it would come to lie, and what would be wrong there, while it is still in the air.
  shadow(drag, answer) {
    if (!answer.result) return;
    const desk = this.desk, { report, done } = answer.result, spot = report.sheets[done.sheet].spots[done.spot];
    const r = desk.view.rect(spot.xMm, spot.yMm, spot.widthMm, spot.heightMm);
    const wrong = report.conflicts.filter((c) => c.sheet === done.sheet && c.spots.includes(done.spot));
    const svg = desk.bench.firstElementChild;
    for (const old of svg.querySelectorAll(".hl-shadow")) old.remove();
    const contour = contourOf(desk.view, spot, desk.pieces.get(spot.pieceId)), kind = { class: `hl-shadow${wrong.length ? " wrong" : ""}` };
    svg.append(contour ? shape("path", { ...kind, d: contour }) : shape("rect", { ...kind, x: r.x, y: r.y, width: r.w, height: r.h }));
    for (const one of wrong) {
      const w = desk.view.rect(one.where.xMm, one.where.yMm, one.where.widthMm, one.where.heightMm);
      svg.append(shape("rect", { class: `hl-shadow hl-conflict ${one.severity}`, fill: `url(#hl-${one.severity})`, x: w.x - 2, y: w.y - 2, width: w.w + 4, height: w.h + 4 }));
    }
    desk.root.querySelector('[data-figure="conflicts"]').textContent = String(report.conflicts.length);
  }
  boardUnder(event) {
    const under = document.elementsFromPoint(event.clientX, event.clientY).map((e) => e.closest("[data-board]")).find(Boolean);
    return under ? Number(under.dataset.board) : -1;
  }
  over(event) {
    const to = this.boardUnder(event);
    for (const board of this.desk.root.querySelectorAll("[data-board]")) board.classList.toggle("taking", Number(board.dataset.board) === to && to !== this.desk.sheet);
  }

  async up(event) {
    const desk = this.desk, drag = this.drag;
    if (drag?.began && event.pointerId === drag.id) {
      const to = this.boardUnder(event), edit = this.edit(drag);
      this.drop();
      if (to >= 0 && to !== desk.sheet) await desk.edit({ verb: "pull", spot: drag.spot, to });
      else await desk.edit(edit);
      return;
    }
    this.drop();
    if (this.tap && event.pointerId === this.tap.id && desk.free && event.type === "pointerup") await desk.look(desk.sheet, this.tap.spot);
    this.tap = null;
  }
  drop() {
    this.desk.talk.forget();
    this.drag = null;
    for (const board of this.desk.root.querySelectorAll(".taking")) board.classList.remove("taking");
  }
  cancel() {
    const began = this.drag?.began ?? false;
    this.drop();
    this.tap = null;
    if (began) this.desk.draw();
    return began;
  }
}
