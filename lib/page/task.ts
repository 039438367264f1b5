/** Told how far a task is; `false` asks it to stop. */
export type TaskProgress = (done: number, total: number) => boolean;

/** Work that can take longer than a frame: a pure function, known by its name where it runs beside the page. */
export interface Task<Input, Result> {
  readonly name: string;
  /** Input and result can be structurally cloned. Throws where `progress` returned false before the end. */
  readonly run: (input: Input, progress: TaskProgress) => Result | Promise<Result>;
}

/** Work under way. */
export interface Running<Result> {
  readonly result: Promise<Result>;
  /** Ends it at once; `result` never settles then. */
  readonly stop: () => void;
}

/** How a page has a task run: beside the page, so that nothing blocks a frame. */
export type RunTask = <Input, Result>(
  task: Task<Input, Result>,
  input: Input,
  progress: (done: number, total: number) => void,
) => Running<Result>;

/** Runs a task where it is called; for a place without workers. */
export const runHere: RunTask = (task, input, progress) => {
  let stopped = false;
  const result = new Promise<never>((resolve, reject) => {
    // After the page is drawn.
    setTimeout(async () => {
      if (stopped) return;
      try {
        const told = (done: number, total: number) => {
          progress(done, total);
          return !stopped;
        };
        resolve((await task.run(input, told)) as never);
      } catch (error) {
        reject(error);
      }
    });
  });
  return {
    result,
    stop: () => {
      stopped = true;
    },
  };
};
