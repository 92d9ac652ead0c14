/** The worker as a file of its own beside the page, loaded when the first search is made. */
export function startSearchWorker(): Worker {
  return new Worker(/* webpackChunkName: "searches" */ new URL("./worker.ts", import.meta.url));
}
