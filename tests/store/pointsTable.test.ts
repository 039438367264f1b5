import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type PhotoPoints, pointsFromCsv, pointsToCsv } from '../../lib/store/pointsTable.ts';

const picture: PhotoPoints = {
  photo: 'IMG_0412',
  subject: { horse: 'Bramble', limb: 'LF', date: '2026-03-09', moment: 'before', view: 'side' },
  size: { kind: 'board', width: 200, height: 100 },
  width: 4000,
  height: 3000,
  points: new Map([
    ['ground', [100.5, 2000]],
    ['toe_ground', [1203.4, 1990]],
    ['ground 2', [3900, 2011]],
  ]),
  skipped: ['heel_tubules'],
  entered: { repeat: 2, values: {} },
};

test('a point is a row: photo, view, point, x and y, and which foot it was', () => {
  const [heading, first, second] = pointsToCsv([picture]).split('\n');
  expect(heading).toBe(
    'photo,horse_id,date,limb,moment,repeat,view,point,x_px,y_px,photo_width_px,photo_height_px,bar_mm,board_width_mm,board_height_mm',
  );
  expect(first).toBe('IMG_0412,Bramble,2026-03-09,LF,before,2,side,ground,100.5,2000,4000,3000,,200,100');
  expect(second).toContain(',toe_ground,1203.4,1990,');
});

test('points come back from their file as they were, those that were left out too', () => {
  const bar: PhotoPoints = { ...picture, photo: 'b', size: { kind: 'bar', length: 150 }, skipped: [] };
  const bare = { ...picture, photo: 'c', size: { kind: 'none' }, entered: undefined } as const;
  const { entered: _, ...back } = bare;
  expect(pointsFromCsv(pointsToCsv([picture, bar, bare]))).toEqual([picture, bar, back]);
});

test('read after write gives the same points, whatever the names and places', () => {
  const name = fc.oneof(
    fc.string({ minLength: 1, maxLength: 20 }),
    fc.constantFrom('__proto__', '=1+1', '<b>', '"a,b"'),
  );
  const plain = name.filter((text) => text.trim() === text && text !== '' && !/[\0\r\n]/.test(text));
  const spot = fc.tuple(fc.double({ min: 0, max: 9000, noNaN: true }), fc.double({ min: 0, max: 9000, noNaN: true }));
  fc.assert(
    fc.property(plain, fc.array(spot, { minLength: 1, maxLength: 4 }), (photo, spots) => {
      const points = new Map(spots.map(([x, y], at) => [at === 0 ? 'outline' : `outline ${at + 1}`, [x + 0, y + 0]]));
      const made = { ...picture, photo, points } as unknown as PhotoPoints;
      const [back] = pointsFromCsv(pointsToCsv([made]));
      expect(back.photo).toBe(photo);
      expect([...back.points]).toEqual([...points]);
    }),
    { seed: 6, numRuns: 60 },
  );
});

test('a point without a place is one that was left out; a row without a photo or a point is passed over', () => {
  const [back] = pointsFromCsv(
    'photo,view,point,x_px,y_px\na,side,toe_ground,1,2\na,side,ground,,\n,side,x,1,2\na,side,,1,2\n',
  );
  expect([...back.points]).toEqual([['toe_ground', [1, 2]]]);
  expect(back.skipped).toEqual(['ground']);
  expect(back.size).toEqual({ kind: 'none' });
  expect(back.subject).toEqual({ horse: '', limb: '', date: '', moment: 'between', view: 'side' });
});

test('limbs, dates and moments are understood as people write them', () => {
  const [back] = pointsFromCsv(
    'photo,horse,date,limb,moment,view,point,x_px,y_px\na,Bella,2026-03-09,near fore,pre trim,side,toe_ground,1,2',
  );
  expect(back.subject).toEqual({ horse: 'Bella', limb: 'LF', date: '2026-03-09', moment: 'before', view: 'side' });
});

test('another table is refused in words', () => {
  expect(() => pointsFromCsv('horse,limb\nBella,LF', 'feet.csv')).toThrow(
    /^feet\.csv is no table of points: the columns photo, view, point, x_px, y_px were expected, and photo, view, point, x_px, y_px are not there/,
  );
});
