import { useEffect, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import { bareJpeg, openPicture, ownName } from './openPicture.ts';
import { begin, type Placing } from './placing.ts';
import { closePyramid, type Pyramid, pyramidOf } from './pyramid.ts';
import { codeOf } from './slots.ts';
import type { KeptReading, KnownSize, PictureLandmark, PictureWork, Subject, TrialPicture } from './work.ts';

/** The picture that is being worked on. */
export interface OpenPicture {
  readonly photo: string;
  readonly pyramid: Pyramid;
  /** The picture as it is kept. */
  readonly jpeg: Blob;
  readonly subject: Subject;
  readonly size: KnownSize;
  readonly placing: Placing;
  readonly invented: boolean;
  readonly again?: string;
  readonly entered?: KeptReading['entered'];
}

/** How long after the last change points are kept, in ms. */
const REST = 250;

/**
 * Opens pictures, keeps each with its points as they change, and lists those that are kept.
 * @param onOpen  told which picture is open; `''` where none is
 */
export function useOpenPicture(work: PictureWork, onOpen: (photo: string) => void) {
  const [open, setOpen] = useState<OpenPicture | undefined>();
  const [kept, setKept] = useState<readonly KeptReading[]>([]);
  const [busy, setBusy] = useState('');
  const [notKept, setNotKept] = useState(false);
  const waiting = useRef(new Map<string, KeptReading>());
  const now = useRef({ open, kept });
  now.current.kept = kept;

  const put = (next: OpenPicture | undefined) => {
    if (now.current.open && now.current.open.pyramid !== next?.pyramid) closePyramid(now.current.open.pyramid);
    now.current.open = next;
    setOpen(next);
  };
  const keep = async (reading: KeptReading, jpeg?: Blob) => {
    setKept((all) => [...all.filter(({ photo }) => photo !== reading.photo), reading]);
    try {
      await work.shelf.keep(reading, jpeg);
      setNotKept(false);
    } catch (error) {
      console.info(say`The picture could not be kept in this browser:`, error);
      setNotKept(true);
    }
  };
  const landmarksOf = ({ subject, size }: OpenPicture) => work.landmarks(subject.view, subject.limb, size.kind);
  const readingOf = (open: OpenPicture) => keptForm(open, landmarksOf(open));
  const list = async () => {
    try {
      setKept(await work.shelf.list());
    } catch (error) {
      console.info(say`No pictures can be kept in this browser:`, error);
      setNotKept(true);
    }
  };

  useEffect(() => void list(), []);

  // Points are small: they are kept after each change, and at once when the page is left.
  const unkept = useRef<{ timer: ReturnType<typeof setTimeout>; run: () => void } | undefined>(undefined);
  const keepSoon = () => {
    clearTimeout(unkept.current?.timer);
    const run = () => {
      clearTimeout(unkept.current?.timer);
      unkept.current = undefined;
      const { open } = now.current;
      if (open) void keep(readingOf(open));
    };
    unkept.current = { timer: setTimeout(run, REST), run };
  };
  useEffect(() => {
    const leave = () => unkept.current?.run();
    addEventListener('pagehide', leave);
    return () => {
      removeEventListener('pagehide', leave);
      leave();
      if (now.current.open) closePyramid(now.current.open.pyramid);
    };
  }, []);

  async function show(made: OpenPicture, isNew: boolean) {
    unkept.current?.run();
    put(made);
    onOpen(made.photo);
    if (isNew) await keep(readingOf(made), made.jpeg);
  }

  async function busyWith<Result>(words: string, action: () => Promise<Result>): Promise<Result> {
    setBusy(words);
    try {
      return await action();
    } finally {
      setBusy('');
    }
  }

  const photos = () => now.current.kept.map(({ photo }) => photo);

  return {
    open,
    kept,
    busy,
    notKept,
    landmarksOf,
    readingOf,

    /** Changes what is known of the open picture; it is kept soon. */
    change(by: (open: OpenPicture) => OpenPicture) {
      const { open } = now.current;
      if (!open) return;
      const next = by(open);
      if (next === open) return;
      put(next);
      keepSoon();
    },

    openFile: (file: File) =>
      busyWith(say`Opening the picture …`, async () => {
        const bitmap = await openPicture(file, file.name);
        const jpeg = await bareJpeg(bitmap);
        const photo = ownName(file.name, photos());
        const told = waiting.current.get(photo);
        waiting.current.delete(photo);
        const fits = told && told.width === bitmap.width && told.height === bitmap.height;
        const last = now.current.open ?? now.current.kept.at(-1);
        const made: OpenPicture = {
          photo,
          pyramid: await pyramidOf(bitmap),
          jpeg,
          ...(fits
            ? { ...about(told), placing: begin(told.points, told.skipped) }
            : {
                subject: {
                  horse: '',
                  limb: 'LF',
                  moment: 'between',
                  view: 'side',
                  ...(last && !last.invented && last.subject),
                  date: dayOf(file.lastModified),
                },
                size: last?.size ?? { kind: 'bar', length: 100 },
                placing: begin(),
                invented: false,
              }),
        };
        await show(made, true);
      }),

    openTrial: ({ title, subject, size, draw }: TrialPicture) =>
      busyWith(say`Drawing …`, async () => {
        const drawn = await draw();
        const bitmap = await openPicture(drawn, title);
        const jpeg = await bareJpeg(bitmap);
        const photo = ownName(say`drawn ${subject.limb} ${subject.view}`, photos());
        const made: OpenPicture = {
          photo,
          pyramid: await pyramidOf(bitmap),
          jpeg,
          subject: { ...subject, date: dayOf(Date.now()), moment: 'between' },
          size,
          placing: begin(),
          invented: true,
        };
        await show(made, true);
      }),

    openKept: (photo: string) =>
      busyWith(say`Opening the picture …`, async () => {
        if (photo === now.current.open?.photo) return;
        unkept.current?.run();
        const reading = (await work.shelf.list()).find((one) => one.photo === photo);
        const jpeg = reading && (await work.shelf.picture(photo));
        if (!reading || !jpeg) throw new Error(say`The picture ${photo} is not on this device. Choose its file`);
        const pyramid = await pyramidOf(await openPicture(jpeg, photo));
        const placing = begin(reading.points, reading.skipped);
        await show({ photo, pyramid, jpeg, ...about(reading), placing }, false);
      }),

    /** Lays points out of a file onto the pictures they belong to. @returns what to say of it */
    async openPoints(file: File): Promise<string> {
      const readings = work.fromCsv(await file.text());
      const here = readings.filter(({ photo }) => photos().includes(photo));
      for (const reading of here) {
        const before = now.current.kept.find(({ photo }) => photo === reading.photo)!;
        const { open } = now.current;
        const merged = { ...before, ...reading, invented: before.invented };
        await keep(merged);
        if (open?.photo === reading.photo)
          put({ ...open, ...about(merged), placing: begin(merged.points, merged.skipped) });
      }
      const away = readings.filter(({ photo }) => !photos().includes(photo));
      for (const reading of away) waiting.current.set(reading.photo, reading);
      const words = [
        here.length > 0 && say`The points of ${here.map(({ photo }) => photo).join(', ')} are back on the picture`,
        away.length > 0 &&
          say`Choose the photograph ${away.map(({ photo }) => photo).join(say` or `)} now, and its points are laid on it`,
      ];
      return words.filter(Boolean).join('. ');
    },

    /** Opens the same picture once more, without its points. */
    async placeAgain() {
      const { open } = now.current;
      if (!open) return;
      const { subject, size, invented, jpeg } = open;
      const again = open.again ?? open.photo;
      const photo = ownName(say`${again} once more`, photos());
      const pyramid = await pyramidOf(await openPicture(jpeg, photo));
      await show({ photo, pyramid, jpeg, subject, size, placing: begin(), invented, again }, true);
    },

    /** Takes the open picture and its points off the device. */
    async forget() {
      const { open } = now.current;
      if (!open) return;
      clearTimeout(unkept.current?.timer);
      unkept.current = undefined;
      await work.shelf.forget(open.photo);
      setKept((all) => all.filter(({ photo }) => photo !== open.photo));
      put(undefined);
      onOpen('');
    },

    /** Every picture's points, those of the open one as they are now. */
    all: (reading: KeptReading) => [...kept.filter(({ photo }) => photo !== reading.photo), reading],
  };
}

/** The open picture as it is kept: what belongs to its view. */
function keptForm(open: OpenPicture, landmarks: readonly PictureLandmark[]): KeptReading {
  const { photo, subject, size, pyramid, placing, invented, again, entered } = open;
  const codes = new Set(landmarks.map(({ code }) => code));
  return {
    photo,
    subject,
    size,
    width: pyramid.width,
    height: pyramid.height,
    points: new Map([...placing.spots].filter(([name]) => codes.has(codeOf(name)))),
    skipped: [...placing.skipped].filter((code) => codes.has(code)),
    invented,
    ...(again && { again }),
    ...(entered && { entered }),
  };
}

const about = ({ subject, size, invented, again, entered }: KeptReading) => ({
  subject,
  size,
  invented,
  ...(again && { again }),
  ...(entered && { entered }),
});

/** The day of a moment where the reader is: `2026-03-09`. */
function dayOf(time: number): string {
  const date = new Date(time);
  const two = (value: number) => String(value).padStart(2, '0');
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`;
}
