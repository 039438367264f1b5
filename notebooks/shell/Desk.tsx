import { counted, say } from '../../lib/index.ts';
import { Copies } from './Copies.tsx';
import { inUse, keeping } from './herdInUse.ts';
import { Opening } from './Opening.tsx';
import { newer, reloadWaits, takeNewer } from './offline.ts';
import { Problems } from './Problems.tsx';
import { Records } from './Records.tsx';
import { UnitsSwitch } from './UnitsSwitch.tsx';
import { Whose } from './Whose.tsx';

/** What stands above every page: whose herd this is, how to open another, which units, what could not be used. */
export function Desk() {
  return (
    <section aria-label={say`Herd and units`}>
      <div class="desk-bar">
        <Whose />
        <Opening>
          <UnitsSwitch />
        </Opening>
      </div>
      <Copies />
      <Records />
      {inUse.value && <Problems />}
      <Broken />
      {reloadWaits.value && (
        <p
          class="notice trouble"
          role="alert"
        >{say`A newer version of this notebook is in use. What was typed on this page is not kept yet: save the table, then reload the page.`}</p>
      )}
      {newer.value && !reloadWaits.value && (
        <p class="notice" role="status">
          {say`A newer version of this notebook is ready.`}{' '}
          <button type="button" onClick={takeNewer}>{say`Use it now`}</button>
        </p>
      )}
    </section>
  );
}

/** Says what of the journal can't be read any more. */
function Broken() {
  // What can't be read is known once the journal was looked at.
  const count = (keeping.value && inUse.value?.record?.broken.length) ?? 0;
  if (count === 0) return null;
  return (
    <p class="notice trouble" role="alert">
      {counted(count, {
        one: say`One change in this record’s journal can’t be read any more and is left out. Everything else stands. Save the record as files, and look over what you typed last.`,
        other: say`${count} changes in this record’s journal can’t be read any more and are left out. Everything else stands. Save the record as files, and look over what you typed last.`,
      })}
    </p>
  );
}
