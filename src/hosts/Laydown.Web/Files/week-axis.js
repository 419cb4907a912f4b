// Time of the week's drawing: open spans laid end to end, and the clock of the shop in each of them.
const GRID = 5;

export class WeekAxis {
  constructor(week) {
    Object.assign(this, { spans: week.spans, px: week.pxPerMinute, left: week.left });
    this.open = new Map(week.presses.map((p) => [p.id, p.open]));
  }

  x(minute) {
    return this.left + this.spans.reduce((sum, [start, end]) => sum + Math.min(Math.max(minute - start, 0), end - start), 0) * this.px;
  }
  minute(x) {
    let rest = (x - this.left) / this.px;
    for (const [start, end] of this.spans) {
      if (rest < end - start) return start + Math.max(0, rest);
      rest -= end - start;
    }
    return this.spans.at(-1)?.[1] ?? 0;
  }

  spanAt(press, minute) { return (this.open.get(press) ?? []).find(([start, end]) => start <= minute && minute < end); }

  // The nearest minute at which a press is worked, on the clock's steps of five minutes; of what is near, ends of other runs come before the clock.
  snap(press, minute, ends, reach) {
    const near = ends.filter((e) => Math.abs(e - minute) <= reach && this.spanAt(press, e)).sort((a, b) => Math.abs(a - minute) - Math.abs(b - minute))[0];
    if (near !== undefined) return near;
    const spans = this.open.get(press) ?? [];
    const within = spans.map(([start, end, clock]) => {
      const past = minutes(clock) % GRID, at = Math.round((minute - start + past) / GRID) * GRID - past + start;
      return Math.min(Math.max(at, start), end - 1);
    });
    return within.sort((a, b) => Math.abs(a - minute) - Math.abs(b - minute))[0];
  }

  // So many minutes on or back; over the end of a shift to the start of the next, or to the end of the one before.
  step(press, minute, by) {
    const spans = this.open.get(press) ?? [], here = spans.findIndex(([start, end]) => start <= minute && minute < end);
    const to = minute + by;
    if (here >= 0 && to >= spans[here][0] && to < spans[here][1]) return to;
    if (by > 0) return spans.find(([start]) => start > minute)?.[0] ?? minute;
    if (here >= 0 && minute > spans[here][0]) return spans[here][0];
    const before = spans.filter(([, end]) => end <= minute).at(-1);
    return before ? Math.max(before[0], before[1] + by) : minute;
  }

  // A minute by the shop's clock, such as 2026-11-26T14:05.
  clock(press, minute) {
    const span = this.spanAt(press, minute);
    if (!span) return null;
    const at = new Date(Date.parse(`${span[2]}:00Z`) + (minute - span[0]) * 60000);
    return at.toISOString().slice(0, 16);
  }
}

const minutes = (clock) => Number(clock.slice(11, 13)) * 60 + Number(clock.slice(14, 16));
const DAYS = ["Sun", "Mon", "Tue", "Wed", "Thu", "Fri", "Sat"];

// Such as Thu 26 14:05: the time as written, whatever clock the browser has.
export const said = (clock) => `${DAYS[new Date(`${clock.slice(0, 10)}T00:00:00Z`).getUTCDay()]} ${Number(clock.slice(8, 10))} ${clock.slice(11, 16)}`;
export const long = (late) => (late < 60 ? `${late} min` : `${Math.floor(late / 60)} h ${String(late % 60).padStart(2, "0")} min`);
