import { inUse } from './herdInUse.ts';
import { Opening } from './Opening.tsx';
import { newer, takeNewer } from './offline.ts';
import { Problems } from './Problems.tsx';
import { UnitsSwitch } from './UnitsSwitch.tsx';
import { Whose } from './Whose.tsx';

/** What stands above every page: whose herd this is, how to open another, which units, what could not be used. */
export function Desk() {
  return (
    <section aria-label="Herd and units">
      <div class="desk-bar">
        <Whose />
        <Opening />
        <UnitsSwitch />
      </div>
      {inUse.value && <Problems />}
      {newer.value && (
        <p class="notice" role="status">
          A newer version of this notebook is ready.{' '}
          <button type="button" onClick={takeNewer}>
            Use it now
          </button>
        </p>
      )}
    </section>
  );
}
