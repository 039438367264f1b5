import { keepPicture, keptPicture, keptPictures } from '../../lib/index.ts';

const LIST = 'pictures.json';

/** What is known of a picture, and in which file it lies. */
interface Listed {
  readonly entry: { readonly photo: string };
  readonly file: string;
  readonly type: string;
}

/** All pictures that are kept on this device, as files beside a record: the pixels, and what was placed on them. */
export async function photographFiles(): Promise<Map<string, Uint8Array>> {
  const files = new Map<string, Uint8Array>();
  const list: Listed[] = [];
  for (const entry of await keptPictures()) {
    const pixels = await keptPicture(entry.photo);
    if (!pixels) continue;
    const file = `${list.length + 1}.${pixels.type.split('/')[1] || 'bin'}`;
    list.push({ entry, file, type: pixels.type });
    files.set(file, new Uint8Array(await pixels.arrayBuffer()));
  }
  if (list.length > 0) files.set(LIST, new TextEncoder().encode(`${JSON.stringify(list, null, 1)}\n`));
  return files;
}

/** Takes pictures in from files beside a record; one of a name that is there already stays as it is. */
export async function takePhotographs(files: ReadonlyMap<string, Uint8Array>): Promise<number> {
  const text = files.get(LIST);
  if (!text) return 0;
  const known = new Set((await keptPictures()).map(({ photo }) => photo));
  const list = JSON.parse(new TextDecoder().decode(text)) as readonly Listed[];
  const fresh = list.filter(({ entry, file }) => !known.has(entry.photo) && files.has(file));
  for (const { entry, file, type } of fresh)
    await keepPicture(entry, new Blob([files.get(file)! as BlobPart], { type }));
  return fresh.length;
}
