/** What a page tells the others: that a record has new entries, or that records were made, renamed, chosen or deleted. */
export type Told = { readonly kind: 'entries'; readonly record: string } | { readonly kind: 'records' };

let opened: BroadcastChannel | undefined;

/** One for the whole page, because a channel doesn't hear itself. */
function channel(): BroadcastChannel {
  opened ??= new BroadcastChannel('evenhoof records');
  return opened;
}

export function tellOthers(told: Told): void {
  channel().postMessage(told);
}

/** Calls back for what other pages of the notebook tell. @returns what ends it */
export function onTold(heard: (told: Told) => void): () => void {
  const listener = ({ data }: MessageEvent<Told>) => heard(data);
  channel().addEventListener('message', listener);
  return () => channel().removeEventListener('message', listener);
}
