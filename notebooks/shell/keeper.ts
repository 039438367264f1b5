import { computed } from '@preact/signals';
import { changePages, foundRecord, type Keeper, type KeptPage, pagesWith, recordInUse, say } from '../../lib/index.ts';
import { inUse, inventedCopy, keptPages, show, withoutFeet } from './herdInUse.ts';
import { keptAddress } from './keptAddress.ts';

type Made = (pages: readonly KeptPage[]) => readonly KeptPage[];

/** Keeps pages in the record in use. The invented herd has none: the first page begins a copy of it, as typing does. */
export const keeper: Keeper = {
  pages: keptPages,
  where: computed(() => {
    const record = withoutFeet.value ?? inUse.value?.record;
    if (record === undefined)
      return say`These horses are invented: keeping a page begins a changed copy of them on this device, which is gone, pages and all, when you go back to the demo herd as it was.`;
    return record.info.invented
      ? say`It is kept in the changed copy of the demo herd, and gone with it when you go back to the demo herd as it was.`
      : say`It is kept in the record “${record.info.name}” on this device, and in its copies.`;
  }),
  address: keptAddress,
  async keep(page) {
    const before = placeOf(page.title);
    await change((pages) => pagesWith(pages, page));
    return () => change((pages) => (before ? pagesWith(pages, before.page) : without(pages, page.title)));
  },
  async rename(title, to) {
    const renamed = (from: string, name: string) =>
      change((pages) => {
        if (pages.some((page) => page.title === name)) throw new Error(say`There is a page “${name}” already`);
        return pages.map((page) => (page.title === from ? { ...page, title: name } : page));
      });
    await renamed(title, to);
    return () => renamed(to, title);
  },
  async remove(title) {
    const before = placeOf(title);
    await change((pages) => without(pages, title));
    return async () => before && change((pages) => pagesWith(pages, before.page, before.at));
  },
};

const without: (pages: readonly KeptPage[], title: string) => readonly KeptPage[] = (pages, title) =>
  pages.filter((page) => page.title !== title);

/** A page that is kept now, and its place. */
function placeOf(title: string): { readonly page: KeptPage; readonly at: number } | undefined {
  const at = keptPages.value.findIndex((page) => page.title === title);
  return at < 0 ? undefined : { page: keptPages.value[at], at };
}

async function change(made: Made): Promise<void> {
  // Tables that were opened a moment ago may be on their way to the disk.
  await inUse.value?.record?.flushed();
  const info = await recordInUse();
  if (info) await changePages(info.id, made);
  else await beginCopy(made([]));
  await show();
}

async function beginCopy(pages: readonly KeptPage[]): Promise<void> {
  const { feet, horses, visits, whose } = inUse.value!;
  if (whose === 'own') throw new Error(say`this browser keeps nothing, so the record has no place for a page`);
  await foundRecord({ ...inventedCopy(), pages }, { feet, ...(horses && { horses }), ...(visits && { visits }) });
}
