import { addressOf, type Editing, type Herd, isoFromDays, midSentence } from '../../lib/index.ts';
import { pictureWork } from './pictureWork.ts';

type Found = Awaited<ReturnType<NonNullable<Editing['picture']>>>;

/**
 * The picture whose points a cell of the feet was worked from: the one whose measures were entered into this row and gave
 * the value that stands there still.
 * @param row  of the table as it is shown
 * @returns `undefined` where the cell was not measured from a picture of this device, or was changed since
 */
export async function pictureOrigin(feet: Herd['feet'], column: string, row: number): Promise<Found> {
  const at = (name: string) => {
    const { values } = feet.column(name);
    return values[row];
  };
  const value = Number(at(column));
  const kept = await pictureWork.shelf.list();
  const reading = kept.find(
    ({ subject, entered }) =>
      entered?.repeat === at('repeat') &&
      entered.values[column] === value &&
      subject.horse.trim() === at('horse_id') &&
      subject.limb === at('limb') &&
      subject.date === isoFromDays(Number(at('date'))) &&
      subject.moment === (at('moment') || 'between'),
  );
  if (!reading) return undefined;
  const { subject, size, photo } = reading;
  const landmarks = pictureWork.landmarks(subject.view, subject.limb, size.kind);
  const measure = pictureWork.answer(reading, kept).measures.find(({ name }) => name === column);
  const used = measure?.from ?? [];
  return {
    name: photo,
    address: addressOf('measure-from-picture', { photo }),
    words: midSentence(pictureWork.views.find(({ name }) => name === subject.view)?.title ?? subject.view),
    moved: !measure || Math.round(measure.value * 100) / 100 !== value,
    points: [...reading.points].flatMap(([slot, [x, y]]) => {
      const landmark = landmarks.find(({ code }) => code === slot.split(' ')[0]);
      return landmark && used.includes(landmark.code) ? [{ title: landmark.title, x, y }] : [];
    }),
  };
}
