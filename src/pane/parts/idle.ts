/** Longest piece of work between two frames, in milliseconds. */
const SLICE_MS = 8;

/** Runs `slice` whenever the page has nothing better to do, until it says that it is done; returns the function that stops it. */
export function inIdleSlices(slice: (mayGoOn: () => boolean) => "done" | "more"): () => void {
  let stopped = false;
  const next = () => {
    // Not every browser engine that a host brings has requestIdleCallback.
    if (typeof requestIdleCallback === "function") requestIdleCallback(run, { timeout: 200 });
    else setTimeout(run, 16);
  };
  const run = () => {
    if (stopped) return;
    const start = performance.now();
    if (slice(() => performance.now() - start < SLICE_MS) === "more") next();
  };
  next();
  return () => {
    stopped = true;
  };
}

/** Calls `act` once, when calls to the returned function have paused for `ms`. */
export function afterPause(ms: number, act: () => void): { touch(): void; stop(): void } {
  let timer: ReturnType<typeof setTimeout> | undefined;
  return {
    touch() {
      clearTimeout(timer);
      timer = setTimeout(act, ms);
    },
    stop: () => clearTimeout(timer),
  };
}
