import { useState } from 'preact/hooks';
import { say } from '../../words/say.ts';

/** Runs what may fail outside of drawing, and keeps the reason for a `FailureLine`. */
export function useFailure(): [string, (action: () => void | Promise<void>) => Promise<void>] {
  const [failure, setFailure] = useState('');
  const attempt = async (action: () => void | Promise<void>) => {
    try {
      await action();
      setFailure('');
    } catch (error) {
      setFailure(error instanceof Error ? error.message : String(error));
    }
  };
  return [failure, attempt];
}

export function FailureLine({ failure }: { failure: string }) {
  if (failure === '') return null;
  return <p class="trouble" role="alert">{say`That did not work: ${failure}. Your tables are untouched.`}</p>;
}
