import { counted, say } from '../../lib/index.ts';
import { inUse, keeping, tableNames, useDemo, withoutFeet } from './herdInUse.ts';

/** Says at every moment whether these are the reader's horses or invented ones. */
export function Whose() {
  const notKept = keeping.value.kept === 'not kept';
  if (!inUse.value) return <p class="whose">{say`No herd yet`}</p>;
  if (inUse.value.whose === 'own' && inUse.value.record?.info.invented)
    return (
      <div class="whose demo">
        <p>
          <strong>{say`A changed copy of the invented demo herd.`}</strong> {say`None of these horses exists.`}{' '}
          {notKept && say`The copy could not be kept in this browser and is gone when you leave this page.`}
        </p>
        <button type="button" onClick={useDemo}>{say`Back to the demo herd as it was`}</button>
      </div>
    );
  if (inUse.value.whose === 'own') {
    const own = inUse.value;
    const files = tableNames.flatMap((name) => own[name]?.file ?? []);
    return (
      <div class="whose own">
        <p>
          <strong>{say`Your herd`}</strong>{' '}
          {say`“${own.record?.info.name ?? ''}”, from ${files.join(', ')}. ${
            notKept
              ? say`It could not be kept in this browser and is gone when you leave this page.`
              : say`It stays on this device.`
          }`}
        </p>
        <button type="button" onClick={useDemo}>{say`Put it away, show the demo herd`}</button>
      </div>
    );
  }
  const waited = withoutFeet.value?.tables() ?? {};
  const waiting = tableNames.flatMap((name) => waited[name]?.file ?? []);
  const files = waiting.join(say` and `);
  return (
    <div class="whose demo">
      <p>
        <strong>{say`Invented demo herd.`}</strong> {say`None of these horses exists.`}
      </p>
      {waiting.length > 0 && (
        <p role="status">
          {counted(waiting.length, {
            one: say`${files} is read and kept. Your own pages appear once you open your table of feet too.`,
            other: say`${files} are read and kept. Your own pages appear once you open your table of feet too.`,
          })}
        </p>
      )}
    </div>
  );
}
