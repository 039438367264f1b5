import {
  isMainThread,
  MessageChannel,
  type MessagePort,
  receiveMessageOnPort,
  Worker,
  workerData,
} from 'node:worker_threads';
import type { PartRead } from '../rowReader.ts';
import type { Helper } from './helper.ts';
import { type PartTask, readPart } from './readPart.ts';

const sign = 'evenhoof reads';
/** Of the numbers that both threads see: whether the helper has come, and how many tasks it has ended. */
const come = 0;
const ended = 1;
/** Milliseconds without an answer after which none is expected. */
const patience = 60_000;

interface Start {
  readonly sign: typeof sign;
  readonly seen: Int32Array;
  readonly port: MessagePort;
}

let helper: Helper | undefined;

/** The thread that helps this one to read. It is called in once, which takes it some 50 ms, and ends with the process. */
export function readingHelper(): Helper {
  helper ??= callIn();
  return helper;
}

function callIn(): Helper {
  const seen = new Int32Array(new SharedArrayBuffer(8));
  const { port1: ours, port2: port } = new MessageChannel();
  const start: Start = { sign, seen, port };
  const worker = new Worker(new URL(import.meta.url), { workerData: start, transferList: [port] });
  worker.unref();
  let asked = 0;
  let lost = false;
  // Where no thread can be had, all is read by this one.
  worker.on('error', () => {
    lost = true;
  });
  return {
    get free() {
      return !lost && Atomics.load(seen, come) === 1 && Atomics.load(seen, ended) === asked;
    },
    ask(task) {
      const before = asked++;
      ours.postMessage(task);
      return () => {
        lost ||= Atomics.wait(seen, ended, before, patience) === 'timed-out';
        return lost ? undefined : (receiveMessageOnPort(ours)?.message as PartRead | undefined);
      };
    },
  };
}

function serve({ seen, port }: Start): void {
  port.on('message', (task: PartTask) => {
    port.postMessage(answer(task));
    Atomics.add(seen, ended, 1);
    Atomics.notify(seen, ended);
  });
  Atomics.store(seen, come, 1);
}

/** Whatever goes wrong here, the other thread reads the file alone and meets it too. */
function answer(task: PartTask): PartRead | undefined {
  try {
    return readPart(task);
  } catch {
    return undefined;
  }
}

if (!isMainThread && workerData?.sign === sign) serve(workerData);
