import type { RefObject } from 'preact';
import { useLayoutEffect, useRef } from 'preact/hooks';

/**
 * The text of a field that is told what was typed once it is left: drawing the field again, for whatever else has changed,
 * takes nothing away that is being typed.
 * @param text  what stands in the field while nobody types
 */
export function useFieldText(text: string): {
  readonly ref: RefObject<HTMLInputElement>;
  readonly defaultValue: string;
} {
  const ref = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => {
    // What stands there as a choice has no field.
    if (ref.current) ref.current.value = text;
  }, [text]);
  return { ref: ref as RefObject<HTMLInputElement>, defaultValue: text };
}
