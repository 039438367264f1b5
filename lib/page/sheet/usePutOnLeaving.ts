import type { RefObject } from 'preact';
import { useEffect } from 'preact/hooks';

/**
 * Puts what is just being typed into its place before the page may be gone: a phone ends pages that are out of sight
 * without a word.
 * @param place  what holds the fields
 */
export function usePutOnLeaving(place: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const put = () => {
      const field = document.activeElement;
      if (field && place.current?.contains(field)) field.dispatchEvent(new Event('change', { bubbles: true }));
    };
    const putIfHidden = () => document.visibilityState === 'hidden' && put();
    // Before those look who keep what was put.
    addEventListener('pagehide', put, true);
    addEventListener('visibilitychange', putIfHidden, true);
    return () => {
      removeEventListener('pagehide', put, true);
      removeEventListener('visibilitychange', putIfHidden, true);
    };
  }, []);
}
