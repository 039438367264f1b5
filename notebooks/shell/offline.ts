import { type Signal, signal } from '@preact/signals';
import { inUse } from './herdInUse.ts';

/** A newer notebook that waits to take over, once there is one. */
export const newer: Signal<ServiceWorker | undefined> = signal(undefined);

/** Keeps the notebook on the device for days without a network. Where the browser won't, it works all the same. */
export async function keepForOffline(): Promise<void> {
  if (!('serviceWorker' in navigator) || import.meta.env.DEV) return;
  const workers = navigator.serviceWorker;
  // The first worker of all takes over unasked; only a change of worker means other files.
  let followed = workers.controller !== null;
  workers.addEventListener('controllerchange', () => {
    if (followed) reloadSafely();
    followed = true;
  });
  try {
    const registration = await workers.register('service-worker.js');
    const look = () => {
      if (registration.waiting && workers.controller) newer.value = registration.waiting;
    };
    look();
    registration.addEventListener('updatefound', () => registration.installing?.addEventListener('statechange', look));
  } catch (error) {
    console.warn('The notebook could not be kept for use without a network:', error);
  }
}

/** Lets the newer notebook take over; every open page of it reloads once what was typed in it is kept. */
export function takeNewer(): void {
  newer.value?.postMessage('take over');
}

/** Whether the newer notebook has taken over while something typed on this page could not be kept. */
export const reloadWaits: Signal<boolean> = signal(false);

/** A cell that is being typed in is finished first, and the page stays where it holds something that isn't kept. */
async function reloadSafely(): Promise<void> {
  if (document.activeElement instanceof HTMLElement) document.activeElement.blur();
  try {
    await inUse.value?.record?.flushed();
    location.reload();
  } catch {
    reloadWaits.value = true;
  }
}
