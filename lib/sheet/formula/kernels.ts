/**
 * Loops over a block of values: `out[o …] = f(x[i …], y[j …])` for `n` values, a multiple of four. An operation on one
 * value looks at `x` alone. `out` may be `x` or `y` where the offsets are equal.
 *
 * Four values are taken at a time because the engine looks up the length and the address of each array at each turn of
 * a loop: this halves the time of a sum. `v + (v - v)` is `v` where that is finite and missing where it isn't, without
 * a branch, and so is `Number(a < b)`, where `a < b ? 1 : 0` is one. Each loop is written out, as one that calls a function a value takes four times as long.
 */
export type Kernel = (
  out: Float64Array,
  o: number,
  x: Float64Array,
  i: number,
  y: Float64Array,
  j: number,
  n: number,
) => void;

export const add: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k] + y[j + k];
    const b = x[i + k + 1] + y[j + k + 1];
    const c = x[i + k + 2] + y[j + k + 2];
    const d = x[i + k + 3] + y[j + k + 3];
    out[o + k] = a + (a - a);
    out[o + k + 1] = b + (b - b);
    out[o + k + 2] = c + (c - c);
    out[o + k + 3] = d + (d - d);
  }
};

export const subtract: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k] - y[j + k];
    const b = x[i + k + 1] - y[j + k + 1];
    const c = x[i + k + 2] - y[j + k + 2];
    const d = x[i + k + 3] - y[j + k + 3];
    out[o + k] = a + (a - a);
    out[o + k + 1] = b + (b - b);
    out[o + k + 2] = c + (c - c);
    out[o + k + 3] = d + (d - d);
  }
};

export const multiply: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k] * y[j + k];
    const b = x[i + k + 1] * y[j + k + 1];
    const c = x[i + k + 2] * y[j + k + 2];
    const d = x[i + k + 3] * y[j + k + 3];
    out[o + k] = a + (a - a);
    out[o + k + 1] = b + (b - b);
    out[o + k + 2] = c + (c - c);
    out[o + k + 3] = d + (d - d);
  }
};

export const divide: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k] / y[j + k];
    const b = x[i + k + 1] / y[j + k + 1];
    const c = x[i + k + 2] / y[j + k + 2];
    const d = x[i + k + 3] / y[j + k + 3];
    out[o + k] = a + (a - a);
    out[o + k + 1] = b + (b - b);
    out[o + k + 2] = c + (c - c);
    out[o + k + 3] = d + (d - d);
  }
};

/** `(x - y[j]) / y[j + 1]`, as standard scores are: two numbers for all rows, and one pass instead of two. */
export const score: Kernel = (out, o, x, i, y, j, n) => {
  const centre = y[j];
  const scale = y[j + 1];
  for (let k = 0; k < n; k += 4) {
    const a = (x[i + k] - centre) / scale;
    const b = (x[i + k + 1] - centre) / scale;
    const c = (x[i + k + 2] - centre) / scale;
    const d = (x[i + k + 3] - centre) / scale;
    out[o + k] = a + (a - a);
    out[o + k + 1] = b + (b - b);
    out[o + k + 2] = c + (c - c);
    out[o + k + 3] = d + (d - d);
  }
};

export const less: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k];
    const b = x[i + k + 1];
    const c = x[i + k + 2];
    const d = x[i + k + 3];
    const e = y[j + k];
    const f = y[j + k + 1];
    const g = y[j + k + 2];
    const h = y[j + k + 3];
    out[o + k] = Number(a < e) + (a - a) + (e - e);
    out[o + k + 1] = Number(b < f) + (b - b) + (f - f);
    out[o + k + 2] = Number(c < g) + (c - c) + (g - g);
    out[o + k + 3] = Number(d < h) + (d - d) + (h - h);
  }
};

export const atMost: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k];
    const b = x[i + k + 1];
    const c = x[i + k + 2];
    const d = x[i + k + 3];
    const e = y[j + k];
    const f = y[j + k + 1];
    const g = y[j + k + 2];
    const h = y[j + k + 3];
    out[o + k] = Number(a <= e) + (a - a) + (e - e);
    out[o + k + 1] = Number(b <= f) + (b - b) + (f - f);
    out[o + k + 2] = Number(c <= g) + (c - c) + (g - g);
    out[o + k + 3] = Number(d <= h) + (d - d) + (h - h);
  }
};

export const equal: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) {
    const a = x[i + k];
    const b = y[j + k];
    out[o + k] = Number(a === b) + (a - a) + (b - b);
  }
};

export const unequal: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) {
    const a = x[i + k];
    const b = y[j + k];
    out[o + k] = Number(a !== b) + (a - a) + (b - b);
  }
};

export const and: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) {
    const a = x[i + k];
    const b = y[j + k];
    out[o + k] = a === 0 || b === 0 ? 0 : a * b;
  }
};

export const or: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) {
    const a = x[i + k];
    const b = y[j + k];
    out[o + k] = a === 1 || b === 1 ? 1 : a + b;
  }
};

/** The same with the sides changed: `x > y` is `y < x`. */
export function turned(kernel: Kernel): Kernel {
  return (out, o, x, i, y, j, n) => kernel(out, o, y, j, x, i, n);
}

/** `then` where the test is 1, `otherwise` where it is 0. `arms` holds the `n` values of `otherwise`, then those of `then`. */
export const choose: Kernel = (out, o, test, i, arms, j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = test[i + k];
    const b = test[i + k + 1];
    const c = test[i + k + 2];
    const d = test[i + k + 3];
    out[o + k] = arms[j + (a | 0) * n + k] + (a - a);
    out[o + k + 1] = arms[j + (b | 0) * n + k + 1] + (b - b);
    out[o + k + 2] = arms[j + (c | 0) * n + k + 2] + (c - c);
    out[o + k + 3] = arms[j + (d | 0) * n + k + 3] + (d - d);
  }
};

export const copy: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k += 4) {
    const a = x[i + k];
    const b = x[i + k + 1];
    const c = x[i + k + 2];
    const d = x[i + k + 3];
    out[o + k] = a;
    out[o + k + 1] = b;
    out[o + k + 2] = c;
    out[o + k + 3] = d;
  }
};

export const abs: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.abs(x[i + k]);
};

export const sqrt: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.sqrt(x[i + k]);
};

export const sin: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.sin(x[i + k]);
};

export const cos: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.cos(x[i + k]);
};

export const tan: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.tan(x[i + k]);
};

export const asin: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.asin(x[i + k]);
};

export const acos: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.acos(x[i + k]);
};

export const atan: Kernel = (out, o, x, i, _y, _j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.atan(x[i + k]);
};

/** A nought with a minus sign, which rounding leaves behind, would turn the line about: adding 0 takes the sign off. */
export const atan2: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.atan2(x[i + k] + 0, y[j + k] + 0);
};

export const min: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.min(x[i + k], y[j + k]);
};

export const max: Kernel = (out, o, x, i, y, j, n) => {
  for (let k = 0; k < n; k++) out[o + k] = Math.max(x[i + k], y[j + k]);
};

/** Any operation, called value by value. */
export function eachOf(of: (x: number, y: number) => number): Kernel {
  return (out, o, x, i, y, j, n) => {
    for (let k = 0; k < n; k++) out[o + k] = of(x[i + k], y[j + k]);
  };
}

/** `table[code]`, missing for a code of -1: group results to rows, partners' values, the truth of each text. */
export function lookUp(codes: Int32Array): Kernel {
  return (out, o, _x, i, table, _j, n) => {
    for (let k = 0; k < n; k += 4) {
      const a = codes[i + k];
      const b = codes[i + k + 1];
      const c = codes[i + k + 2];
      const d = codes[i + k + 3];
      out[o + k] = a < 0 ? Number.NaN : table[a];
      out[o + k + 1] = b < 0 ? Number.NaN : table[b];
      out[o + k + 2] = c < 0 ? Number.NaN : table[c];
      out[o + k + 3] = d < 0 ? Number.NaN : table[d];
    }
  };
}
