import { render } from 'preact';
import { type KeptPage, say } from '../../lib/index.ts';
import { keptAddress } from './keptAddress.ts';

let place: HTMLElement | undefined;

/** The reader's own pages, in the navigation behind all others. */
export function drawKeptLinks(pages: readonly KeptPage[]): void {
  place ??= document.querySelector('nav details')!.appendChild(document.createElement('div'));
  render(pages.length > 0 && <Links pages={pages} />, place);
}

function Links({ pages }: { pages: readonly KeptPage[] }) {
  return (
    <div class="kept-links">
      <p class="note" id="kept-links">
        {say`Your own:`}
      </p>
      <ul aria-labelledby="kept-links">
        {pages.map((page) => (
          <li key={page.title}>
            <a href={keptAddress(page)}>{page.title}</a>
          </li>
        ))}
      </ul>
    </div>
  );
}
