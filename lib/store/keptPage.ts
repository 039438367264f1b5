/** A page of the reader's own, as it is kept in a record: no two of a record have the same title. */
export interface KeptPage {
  readonly title: string;
  /** What its controls say, by name. */
  readonly controls: Readonly<Record<string, string>>;
}

/** Whether something read from a file is a page that was kept. */
export function isKeptPage(value: unknown): value is KeptPage {
  const { title, controls } = Object(value) as Partial<Record<keyof KeptPage, unknown>>;
  const plain = typeof controls === 'object' && controls !== null && !Array.isArray(controls);
  return typeof title === 'string' && plain && Object.values(controls).every((said) => typeof said === 'string');
}

/** Whether two pages show the same, whatever they are called. */
export function samePage({ controls: a }: KeptPage, { controls: b }: KeptPage): boolean {
  const names = Object.keys(a);
  return names.length === Object.keys(b).length && names.every((name) => Object.hasOwn(b, name) && a[name] === b[name]);
}

/**
 * Pages with one more: in the place of the one of the same title, or else at the end.
 * @param at  another place for one of a new title, from 0
 */
export function pagesWith(pages: readonly KeptPage[], page: KeptPage, at = pages.length): readonly KeptPage[] {
  const same = pages.findIndex(({ title }) => title === page.title);
  return same < 0 ? pages.toSpliced(at, 0, page) : pages.with(same, page);
}

/**
 * The pages of two records in one, each once. Of two that share a title and show different things, theirs gets a number.
 * @example mergedPages([{ title: 'Toes', controls: a }], [{ title: 'Toes', controls: b }])[1].title // 'Toes (2)'
 */
export function mergedPages(ours: readonly KeptPage[], theirs: readonly KeptPage[]): readonly KeptPage[] {
  const all = [...ours];
  for (const page of theirs) {
    let title = page.title;
    let known = all.find((one) => one.title === title);
    for (let number = 2; known && !samePage(known, page); number++) {
      title = `${page.title} (${number})`;
      known = all.find((one) => one.title === title);
    }
    if (!known) all.push({ ...page, title });
  }
  return all;
}
