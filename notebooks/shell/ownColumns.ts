import type { ComputedDefinition, Herd, Sheet } from '../../lib/index.ts';
import { say } from '../../lib/index.ts';

/**
 * A herd whose feet have the reader's own computed columns too. They are added when first someone asks for the feet; one
 * that can't be worked out from these tables is passed over.
 */
export function withOwnColumns(herd: Herd, own: readonly ComputedDefinition[] = []): Herd {
  if (own.length === 0) return herd;
  const done = new WeakSet<Sheet>();
  const added = <Feet extends Sheet>(feet: Feet): Feet => {
    if (done.has(feet)) return feet;
    done.add(feet);
    for (const definition of own) {
      try {
        feet.add(definition);
      } catch (error) {
        console.info(say`The column ${definition.name} was passed over:`, error);
      }
    }
    feet.beginHistory();
    return feet;
  };
  return Object.create(herd, {
    feet: { get: () => added(herd.feet) },
    occasions: { get: () => added(herd.occasions) },
  });
}
