import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { forgetPicture, keepPicture, keptPicture, keptPictures } from '../../lib/store/pictures.ts';

const picture = new Blob([Uint8Array.of(255, 216, 255, 0, 1)], { type: 'image/jpeg' });
const bytes = async (blob: Blob | undefined) => blob && [...new Uint8Array(await blob.arrayBuffer())];

test('at first there are no pictures', async () => {
  expect(await keptPictures()).toEqual([]);
  expect(await keptPicture('a')).toBeUndefined();
});

test('a picture comes back with its pixels, its type and what is known of it', async () => {
  const entry = { photo: 'a', points: new Map([['toe', [1, 2]]]) };
  await keepPicture(entry, picture);
  expect(await keptPictures()).toEqual([entry]);
  const back = await keptPicture('a');
  expect(await bytes(back)).toEqual(await bytes(picture));
  expect(back?.type).toBe('image/jpeg');
});

test('what is known of a picture is kept again without its pixels, which stay', async () => {
  await keepPicture({ photo: 'a' });
  expect(await keptPictures()).toEqual([{ photo: 'a' }]);
  expect(await bytes(await keptPicture('a'))).toEqual(await bytes(picture));
});

test('names are only names', async () => {
  await keepPicture({ photo: '__proto__' }, picture);
  expect((await keptPictures()).map(({ photo }) => photo)).toEqual(['__proto__', 'a']);
  await forgetPicture('__proto__');
});

test('a picture that is forgotten is gone with its pixels', async () => {
  await forgetPicture('a');
  expect(await keptPictures()).toEqual([]);
  expect(await keptPicture('a')).toBeUndefined();
});
