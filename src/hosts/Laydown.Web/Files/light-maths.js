// Light as numbers: sRGB primaries, Bradford cones, the white the eye takes for white. No page, so that it can be tried alone.
const TO_XYZ = [0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505];
const CONES = [0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296];

export const times = (a, b) => {
  const out = new Array(9).fill(0);
  for (let r = 0; r < 3; r++) for (let c = 0; c < 3; c++) for (let k = 0; k < 3; k++) out[3 * r + c] += a[3 * r + k] * b[3 * k + c];
  return out;
};
export const apply = (m, v) => [0, 1, 2].map((r) => m[3 * r] * v[0] + m[3 * r + 1] * v[1] + m[3 * r + 2] * v[2]);
export const inverse = (m) => {
  const [a, b, c, d, e, f, g, h, i] = m;
  const det = a * (e * i - f * h) - b * (d * i - f * g) + c * (d * h - e * g);
  return [e * i - f * h, c * h - b * i, b * f - c * e, f * g - d * i, a * i - c * g, c * d - a * f, d * h - e * g, b * g - a * h, a * e - b * d].map((v) => v / det);
};
const TO_CONES = times(CONES, TO_XYZ);
const FROM_CONES = inverse(TO_CONES);

// Carries linear light over so that `white` becomes 1, 1, 1: brightness and colour at once.
export const adapting = (white) => {
  const from = apply(TO_CONES, white), to = apply(TO_CONES, [1, 1, 1]);
  const scale = [to[0] / from[0], 0, 0, 0, to[1] / from[1], 0, 0, 0, to[2] / from[2]];
  return times(FROM_CONES, times(scale, TO_CONES));
};
export const encode = (v) => {
  const c = Math.min(1, Math.max(0, v));
  return c <= 0.0031308 ? 12.92 * c : 1.055 * c ** (1 / 2.4) - 0.055;
};

// Under this luminance the eye no longer keeps up: what is darker looks dark.
const LEAST_WHITE = 1;

// What stands for white, absolute, linear: `adapt` is room, lamp or brighter.
export const whiteOf = (table, room, lamp, adapt) => {
  const wall = [1, 1, 1].map((v) => v * room);
  const lit = [0, 1, 2].map((c) => room * table.uncolouredByRoom[c] + lamp * table.uncolouredByLamp[c]);
  const chosen = adapt === "room" ? wall : adapt === "lamp" ? lit : luminance(table, wall) >= luminance(table, lit) ? wall : lit;
  const y = luminance(table, chosen);
  if (!(y > 1e-9)) return [LEAST_WHITE, LEAST_WHITE, LEAST_WHITE];
  return y < LEAST_WHITE ? chosen.map((v) => (v * LEAST_WHITE) / y) : chosen;
};
export const luminance = (table, rgb) => rgb[0] * table.roomToLuminance[0] + rgb[1] * table.roomToLuminance[1] + rgb[2] * table.roomToLuminance[2];

// Room slider 0 to 1000: 0 is dark, then from a tenth of a lux to 2000 lux in even steps to the eye.
export const luxAt = (v) => (v <= 0 ? 0 : 0.1 * 20000 ** (v / 1000));
export const sliderOf = (lux) => (lux < 0.1 ? 0 : Math.round(1000 * Math.log(lux / 0.1) / Math.log(20000)));
export const said = (v) => (v === 0 ? "0" : v < 1 ? v.toFixed(2) : v < 10 ? v.toFixed(1) : v < 1000 ? v.toFixed(0) : `${Math.round(v / 10) * 10}`);
