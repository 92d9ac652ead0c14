import type { CellFunction } from "../../functions/declare/cell-function.ts";
import type { RawArgument } from "../../functions/declare/param.ts";
import type { Outcome, Working } from "../../functions/run/invoke.ts";
import { keyOf, learn, recall } from "../../functions/run/remember.ts";
import { type Answer, answered, type Explainer, explained } from "../../functions/run/tables-on-demand.ts";
import { READY, type SearchReply, type SearchRequest } from "./messages.ts";

/** What is needed of a `Worker`. */
export interface SearchWorker {
  onmessage: ((event: MessageEvent<SearchReply | typeof READY>) => void) | null;
  onerror: ((event: ErrorEvent) => void) | null;
  onmessageerror: ((event: MessageEvent) => void) | null;
  postMessage(request: SearchRequest): void;
  terminate(): void;
}

/** How long to wait for the worker to load and for a search, in milliseconds. Searches have a fixed effort of a few seconds. */
const START_MS = 15_000;
const SEARCH_MS = 60_000;
/** After so many workers that broke, searches are made in the page. */
const WORKERS = 3;
/** Workings kept; with their pictures they are large. */
const WORKINGS = 20;

interface Job {
  readonly fn: CellFunction;
  readonly request: SearchRequest;
  settle(found: Outcome | Working): void;
}

/**
 * Makes the searches of a page in a worker beside it, so that the page stays alive meanwhile. Each search runs once however many ask for it, and its
 * answer is remembered. Every promise is kept: where the worker does not start, breaks or stays silent, the page makes the search itself.
 */
export class Searches {
  readonly #start: () => SearchWorker;
  readonly #asked = new Map<string, Promise<Outcome | Working>>();
  readonly #workings = new Map<string, Working>();
  readonly #waiting: Job[] = [];
  #running: Job | undefined;
  #worker: SearchWorker | undefined;
  #ready = false;
  #broken = 0;
  #turn = 0;
  #patience: ReturnType<typeof setTimeout> | undefined;

  /** @param start starts a worker that answers as `search-worker.ts` does */
  constructor(start: () => SearchWorker) {
    this.#start = start;
  }

  /** The outcome of a call: at once for a quick function and for a search that is remembered. */
  readonly answer: Answer = (fn, raw) => {
    if (!fn.heavy) return answered(fn, raw);
    const known = recall(fn, raw);
    if (known !== undefined) return known;
    return this.#ask("outcome", fn, raw).then((found) => {
      learn(fn, raw, found as Outcome);
      return found as Outcome;
    });
  };

  /** The working of a call: at once for a quick function and for a search that was worked out lately. */
  readonly explain: Explainer = (fn, raw) => {
    if (!fn.heavy) return explained(fn, raw);
    const key = keyOf(fn, raw);
    const known = this.#workings.get(key);
    if (known !== undefined) return known;
    return this.#ask("working", fn, raw).then((found) => {
      this.#workings.set(key, found as Working);
      if (this.#workings.size > WORKINGS) this.#workings.delete(this.#workings.keys().next().value as string);
      return found as Working;
    });
  };

  #ask(wants: SearchRequest["wants"], fn: CellFunction, args: readonly RawArgument[]): Promise<Outcome | Working> {
    const key = `${wants} ${keyOf(fn, args)}`;
    const begun = this.#asked.get(key);
    if (begun !== undefined) return begun;
    const asked = new Promise<Outcome | Working>((settle) => {
      this.#waiting.push({ fn, request: { turn: ++this.#turn, wants, id: fn.id, args }, settle });
    }).finally(() => this.#asked.delete(key));
    this.#asked.set(key, asked);
    this.#next();
    return asked;
  }

  /** Begins the search that was asked for last: it is the one that is waited for, the earlier ones may be of numbers that have changed since. */
  #next(): void {
    if (this.#running !== undefined) return;
    const job = this.#waiting.pop();
    this.#running = job;
    if (job === undefined) return;
    if (this.#broken >= WORKERS) {
      this.#makeHere(job);
      return;
    }
    try {
      this.#worker ??= this.#open();
      this.#wait(this.#ready ? SEARCH_MS : START_MS);
      this.#worker.postMessage(job.request);
    } catch {
      this.#lose();
    }
  }

  #open(): SearchWorker {
    const worker = this.#start();
    this.#ready = false;
    worker.onmessage = ({ data }) => {
      this.#ready = true;
      if (data === READY) this.#wait(SEARCH_MS);
      else if (data.turn === this.#running?.request.turn) this.#done(data.found);
    };
    worker.onerror = (event) => {
      event.preventDefault();
      this.#lose();
    };
    worker.onmessageerror = () => this.#lose();
    return worker;
  }

  #wait(ms: number): void {
    clearTimeout(this.#patience);
    if (this.#running === undefined) return;
    this.#patience = setTimeout(() => this.#lose(), ms);
  }

  /** The worker is of no use any more: the page makes its search. One that never was of use would not be the next time either. */
  #lose(): void {
    this.#broken += this.#ready ? 1 : WORKERS;
    const worker = this.#worker;
    this.#worker = undefined;
    if (worker !== undefined) {
      worker.onmessage = worker.onerror = worker.onmessageerror = null;
      worker.terminate();
    }
    clearTimeout(this.#patience);
    if (this.#running !== undefined) this.#makeHere(this.#running);
  }

  /** In the page, after what waits for its turn there. */
  #makeHere(job: Job): void {
    setTimeout(async () => {
      const { wants, args } = job.request;
      this.#done(await (wants === "outcome" ? answered(job.fn, args) : explained(job.fn, args)));
    });
  }

  /** @param found undefined where the worker does not know the function */
  #done(found: Outcome | Working | undefined): void {
    clearTimeout(this.#patience);
    const job = this.#running;
    if (job === undefined) return;
    if (found === undefined) {
      this.#makeHere(job);
      return;
    }
    this.#running = undefined;
    job.settle(found);
    this.#next();
  }
}
