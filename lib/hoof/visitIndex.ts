import type { TextColumn } from '../sheet/column.ts';
import { limbs } from './limbs.ts';

/** The columns of a normalised visits table that say whose, when and what. */
export interface VisitColumns {
  readonly horse: TextColumn;
  readonly date: Float64Array;
  /** Where a visit was for one foot only. */
  readonly limb?: TextColumn;
  readonly work?: TextColumn;
}

/**
 * The visits of each foot, in order of date, to be looked up by foot and day. A foot is `4 * horse code + place in limbs`.
 * Visits without a horse of the herd or without a date are left out; of two on one day the first counts. A foot that
 * isn't of the herd, `NaN` included, and a day of `NaN` have no visits.
 */
export class VisitIndex {
  readonly #starts: Int32Array;
  readonly #rows: Int32Array;
  readonly #dates: Float64Array;
  readonly #worked: Uint8Array;
  /** Rows that repeat a day of the same horse and foot. */
  readonly duplicates: readonly number[];

  /** @param horses  the herd's horses; a horse code is a place in this list */
  constructor({ horse, date, limb, work }: VisitColumns, horses: readonly string[]) {
    const codeOf = new Map(horses.map((name, code) => [name, code]));
    const horseCodes = horse.levels.map((name) => codeOf.get(name) ?? -1);
    const limbPlaces = (limb?.levels ?? []).map((code) => (limbs as readonly string[]).indexOf(code));
    const none = work?.levels.indexOf('none') ?? -1;

    const byFoot: number[][] = Array.from({ length: horses.length * 4 }, () => []);
    for (let row = 0; row < date.length; row++) {
      const code = horse.codes[row] < 0 ? -1 : horseCodes[horse.codes[row]];
      if (code < 0 || Number.isNaN(date[row])) continue;
      const only = limb === undefined || limb.codes[row] < 0 ? -1 : limbPlaces[limb.codes[row]];
      for (let place = 0; place < 4; place++) if (only < 0 || only === place) byFoot[code * 4 + place].push(row);
    }

    const duplicates = new Set<number>();
    this.#starts = new Int32Array(byFoot.length + 1);
    const kept: number[] = [];
    byFoot.forEach((rows, foot) => {
      rows.sort((a, b) => date[a] - date[b]);
      rows.forEach((row, i) => {
        if (i > 0 && date[row] === date[rows[i - 1]]) duplicates.add(row);
        else kept.push(row);
      });
      this.#starts[foot + 1] = kept.length;
    });
    this.duplicates = [...duplicates].sort((a, b) => a - b);
    this.#rows = Int32Array.from(kept);
    this.#dates = Float64Array.from(kept, (row) => date[row]);
    this.#worked = Uint8Array.from(kept, (row) => (none >= 0 && work?.codes[row] === none ? 0 : 1));
  }

  /** The visit to a foot on a day, as a row of the visits table; -1 where there was none. */
  on(foot: number, day: number): number {
    const place = this.#placeAtOrBefore(foot, day);
    return place >= 0 && this.#dates[place] === day ? this.#rows[place] : -1;
  }

  /** The latest visit with work on a day or before it, or with `strictly` before it; -1 where there was none. */
  latestWork(foot: number, day: number, strictly = false): number {
    let place = this.#placeAtOrBefore(foot, day);
    while (place >= 0 && (this.#worked[place] === 0 || (strictly && this.#dates[place] >= day)))
      place = place > this.#starts[foot] ? place - 1 : -1;
    return place < 0 ? -1 : this.#rows[place];
  }

  /** Days with work on a foot, in order. */
  workDays(foot: number): number[] {
    const days: number[] = [];
    for (let place = this.#starts[foot]; place < this.#starts[foot + 1]; place++)
      if (this.#worked[place] === 1) days.push(this.#dates[place]);
    return days;
  }

  #placeAtOrBefore(foot: number, day: number): number {
    let low = this.#starts[foot];
    let high = this.#starts[foot + 1];
    while (low < high) {
      const middle = (low + high) >> 1;
      if (this.#dates[middle] <= day) low = middle + 1;
      else high = middle;
    }
    return low > this.#starts[foot] ? low - 1 : -1;
  }
}
