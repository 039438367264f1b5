import { describe, expect, it } from 'vitest';
import { bibliography, withoutSource } from '../../../lib/hoof/bibliography.ts';
import { readings } from '../../../lib/hoof/landmarks/readings.ts';
import { landmarkViews, scaleLandmarks, sharedDepths } from '../../../lib/hoof/landmarks/views.ts';
import { measured } from '../../../lib/hoof/measured.ts';

const scales = Object.values(scaleLandmarks).flat();
const known = (source: string) =>
  Object.hasOwn(bibliography, source) || withoutSource.some((words) => words === source);

describe('the landmarks', () => {
  it.each(landmarkViews.map((view) => [view.title, view] as const))(
    '%s: no code twice, not a scale’s either',
    (_, { landmarks }) => {
      const codes = [...landmarks, ...scales].map(({ code }) => code);
      expect(new Set(codes).size).toBe(codes.length);
    },
  );
  it('say where they lie in one sentence, and where that is written', () => {
    for (const { code, where, source } of [...landmarkViews.flatMap(({ landmarks }) => landmarks), ...scales]) {
      expect(where, code).toMatch(/^[A-Z].*\.$/);
      expect(known(source), `${code}: ${source}`).toBe(true);
    }
  });
  it('that may be many are optional and say how many are of use', () => {
    for (const { code, many, least, optional } of landmarkViews.flatMap(({ landmarks }) => landmarks)) {
      expect(many, code).toBe(least > 1);
      if (many) expect(optional, code).toBe(true);
    }
  });
  it('name their side in their code', () => {
    for (const { code, side } of landmarkViews.flatMap(({ landmarks }) => landmarks))
      expect(/^(medial|lateral)/.exec(code)?.[0], code).toBe(side);
  });
  it('that lie off the plane together are landmarks of that view', () => {
    for (const { view, codes } of sharedDepths) {
      const own = landmarkViews.find((one) => one.view === view)!.landmarks.map(({ code }) => code);
      expect(own).toEqual(expect.arrayContaining([...codes]));
    }
  });
});

describe('the readings', () => {
  it('cover every measured column that a picture of a foot can give, with its title and unit', () => {
    const byTape = ['coronet_circumference_mm'];
    for (const { name, title, unit, table, view } of measured) {
      if (table !== 'feet' || byTape.includes(name)) continue;
      expect(
        readings.find((reading) => reading.name === name),
        name,
      ).toMatchObject({ title, unit, view });
    }
  });
  it('have one name each, and say what they should show and who says so', () => {
    expect(new Set(readings.map(({ name }) => name)).size).toBe(readings.length);
    for (const { name, shows } of readings) {
      expect(shows.value, name).toBeGreaterThan(0);
      expect(known(shows.source), name).toBe(true);
    }
  });
});
