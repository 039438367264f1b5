import type { ComponentType } from 'preact';
import { useEffect, useState } from 'preact/hooks';
import { say } from '../../lib/index.ts';

/** A part that is fetched when it is first shown. */
export function Later<Props extends object>({ part, ...props }: { part: () => Promise<ComponentType<Props>> } & Props) {
  const [Part, setPart] = useState<ComponentType<Props> | undefined>();
  const [trouble, setTrouble] = useState('');
  useEffect(() => {
    part().then(
      (found) => setPart(() => found),
      () => setTrouble(say`This part could not be fetched. Look again once there is a network`),
    );
  }, []);
  if (Part) return <Part {...(props as unknown as Props)} />;
  return <p class={trouble ? 'trouble' : 'waiting'}>{trouble || say`Opening …`}</p>;
}
