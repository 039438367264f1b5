import { describe, expect, it } from 'vitest';
import { type PoseSummary, picturePoses } from './picturePoses.ts';

// The truth comes from a pinhole camera and a foot made of numbers. A fixed run of few poses here; the whole one with
// `npx tsx tests/reference/runPicturePoses.ts 10000`.
const pooled = (rows: readonly PoseSummary[]) => {
  const n = rows.reduce((sum, row) => sum + row.n, 0);
  return rows.reduce((sum, row) => sum + row.covered * row.n, 0) / n;
};

describe('feet in the plane of a board, from anywhere within 10 degrees of square, placed to 1 pixel of 12 megapixels', () => {
  const rows = picturePoses(400, 6);
  it('have their angles measured to half a degree', () => {
    const angles = rows.filter(({ unit }) => unit === 'deg');
    expect(angles).toHaveLength(7);
    for (const { name, rms } of angles) expect(rms, name).toBeLessThan(0.5);
  });
  it('have their lengths measured to a hundredth', () => {
    const lengths = rows.filter(({ unit }) => unit === 'mm');
    expect(lengths).toHaveLength(13);
    for (const { name, rms } of lengths) expect(rms, name).toBeLessThan(0.01);
  });
  it('are covered by their stated errors 95 times in 100', () => {
    expect(pooled(rows)).toBeGreaterThan(0.93);
    expect(pooled(rows)).toBeLessThan(0.97);
  });
});
