import { useEffect, useId, useLayoutEffect, useRef, useState } from 'preact/hooks';
import { say } from '../../words/say.ts';
import { adoptStyle } from '../adoptStyle.ts';
import type { Keep } from '../blocks.ts';
import { FailureLine, useFailure } from '../parts/FailureLine.tsx';
import type { Keeper, KeptChoice, TakeBack } from './keeper.ts';
import { keepStyle } from './keepStyle.ts';

adoptStyle(keepStyle);

interface Props {
  readonly block: Keep;
  readonly keeper: Keeper;
}

/** What was done last, and how to take it back. */
interface Done {
  readonly words: string;
  readonly takeBack?: TakeBack;
}

/** A button that keeps what is shown, and the list of what was kept: to open, to rename, to remove, to take back. */
export function KeepDesk({ block: { page }, keeper }: Props) {
  const id = useId();
  const [done, setDone] = useState<Done | undefined>();
  const [failure, attempt] = useFailure();
  const status = useRef<HTMLParagraphElement>(null);
  useEffect(() => {
    // The button that was pressed may be gone, and the focus with it.
    if (done && document.activeElement === document.body) status.current?.focus();
  }, [done]);
  const work = (words: string, task: () => Promise<TakeBack>) =>
    attempt(async () => {
      setDone(undefined);
      setDone({ words, takeBack: await task() });
    });
  const takeBack = (task: TakeBack) =>
    attempt(async () => {
      await task();
      setDone({ words: say`Taken back.` });
    });
  const pages = keeper.pages.value;
  return (
    <section class="keep">
      {page && (
        <p class="keep-now">
          <button
            type="button"
            onClick={() =>
              work(
                pages.some(({ title }) => title === page.title)
                  ? say`Kept in place of the “${page.title}” of before.`
                  : say`“${page.title}” is kept.`,
                () => keeper.keep(page),
              )
            }
          >
            {say`Keep this page`}
          </button>
          <span class="note">
            {say`As “${page.title}”.`} {keeper.where.value}
          </span>
        </p>
      )}
      <p role="status" tabIndex={-1} ref={status}>
        {done && (
          <>
            {done.words}{' '}
            {done.takeBack && (
              <button type="button" onClick={() => takeBack(done.takeBack!)}>
                {say`Take back`}
              </button>
            )}
          </>
        )}
      </p>
      <FailureLine failure={failure} />
      {pages.length > 0 && (
        <>
          <h3 id={id}>{say`Pages you kept`}</h3>
          <ul aria-labelledby={id}>
            {pages.map((kept) => (
              <OneKept key={kept.title} kept={kept} keeper={keeper} work={work} shown={kept.title === page?.title} />
            ))}
          </ul>
        </>
      )}
    </section>
  );
}

interface OneProps {
  readonly kept: KeptChoice;
  readonly keeper: Keeper;
  readonly shown: boolean;
  readonly work: (words: string, task: () => Promise<TakeBack>) => Promise<void>;
}

function OneKept({ kept, keeper, shown, work }: OneProps) {
  const { title } = kept;
  const [naming, setNaming] = useState(false);
  return (
    <li>
      <a href={keeper.address(kept)} aria-current={shown ? 'page' : undefined}>
        {title}
      </a>
      {naming ? (
        <NewName
          before={title}
          onName={(name) => {
            setNaming(false);
            if (name !== '' && name !== title)
              work(say`“${title}” is called “${name}” now.`, () => keeper.rename(title, name));
          }}
        />
      ) : (
        <button type="button" aria-label={say`Rename ${title}`} onClick={() => setNaming(true)}>
          {say`Rename`}
        </button>
      )}
      <button
        type="button"
        aria-label={say`Remove ${title}`}
        onClick={() => work(say`“${title}” is removed.`, () => keeper.remove(title))}
      >
        {say`Remove`}
      </button>
    </li>
  );
}

function NewName({ before, onName }: { before: string; onName: (name: string) => void }) {
  const [name, setName] = useState(before);
  const field = useRef<HTMLInputElement>(null);
  useLayoutEffect(() => field.current?.select(), []);
  return (
    <form
      onSubmit={(event) => {
        event.preventDefault();
        onName(name.trim());
      }}
    >
      <label>
        {say`Its new name`}{' '}
        <input
          type="text"
          ref={field}
          value={name}
          maxLength={80}
          onInput={(event) => setName(event.currentTarget.value)}
        />
      </label>
      <button type="submit">{say`Rename it`}</button>
    </form>
  );
}
