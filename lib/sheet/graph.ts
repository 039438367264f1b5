/** For each name the names it is made from. */
export type Needs = (name: string) => Iterable<string>;

/** Either an order in which everything comes after what it needs, or a loop that allows none. */
export type Order = { readonly order: readonly string[] } | { readonly loop: readonly string[] };

/**
 * The order in which columns can be computed: each after all that it needs, otherwise as given.
 * @param names  what has to be computed; what they need is found from there
 * @param needs  what each name is made from
 * @returns the order, needed names included; or a loop, its first name repeated at its end: `['a', 'b', 'a']`
 * @example dependencyOrder(['b'], (name) => (name === 'b' ? ['a'] : [])) // { order: ['a', 'b'] }
 */
export function dependencyOrder(names: Iterable<string>, needs: Needs): Order {
  const order: string[] = [];
  const done = new Set<string>();
  // A stack of our own: a chain of columns may be longer than the engine's call stack.
  const path: { name: string; rest: Iterator<string> }[] = [];
  const onPath = new Set<string>();
  const enter = (name: string) => {
    path.push({ name, rest: needs(name)[Symbol.iterator]() });
    onPath.add(name);
  };
  for (const start of names) {
    if (!done.has(start)) enter(start);
    while (path.length > 0) {
      const { name, rest } = path[path.length - 1];
      const next = rest.next();
      if (next.done) {
        path.pop();
        onPath.delete(name);
        done.add(name);
        order.push(name);
      } else if (onPath.has(next.value)) {
        const loop = path.map((step) => step.name);
        return { loop: [...loop.slice(loop.indexOf(next.value)), next.value] };
      } else if (!done.has(next.value)) enter(next.value);
    }
  }
  return { order };
}

/** A loop as it is shown to people: `level → tilt → level`. */
export function loopInWords(loop: readonly string[]): string {
  return loop.join(' → ');
}

/**
 * Every name that is made from `name`, directly or through others, in the order of `names`.
 * @example dependents('a', ['a', 'b', 'c'], (n) => ({ a: [], b: ['a'], c: ['b'] })[n]!) // ['b', 'c']
 */
export function dependents(name: string, names: readonly string[], needs: Needs): string[] {
  const reached = new Set([name]);
  for (let grown = true; grown; ) {
    grown = false;
    for (const candidate of names) {
      if (reached.has(candidate)) continue;
      for (const needed of needs(candidate))
        if (reached.has(needed)) {
          reached.add(candidate);
          grown = true;
          break;
        }
    }
  }
  return names.filter((candidate) => candidate !== name && reached.has(candidate));
}
