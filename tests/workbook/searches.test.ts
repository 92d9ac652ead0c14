import { afterEach, beforeEach, describe, expect, test, vi } from "vitest";
import { registry } from "../../src/functions/registry.ts";
import { explain } from "../../src/functions/run/invoke.ts";
import { Searches } from "../../src/workbook/searches/searches.ts";
import { doubling, FakeWorker } from "./search-stubs.ts";

/** Answers are remembered for the whole page, so every test has a function of its own. */
let count = 0;

function setUp(knows = true) {
  const { fn, made } = doubling(`DOUBLE_${++count}`);
  const workers: FakeWorker[] = [];
  const searches = new Searches(() => {
    const worker = new FakeWorker(knows ? [fn] : []);
    workers.push(worker);
    return worker;
  });
  const last = (): FakeWorker => workers.at(-1) as FakeWorker;
  return { fn, made, workers, searches, last };
}

const gives = (value: number) => ({ ok: true, value });

beforeEach(() => {
  vi.useFakeTimers();
});
afterEach(() => {
  vi.useRealTimers();
});

describe("a search in the worker", () => {
  test("a quick function is answered at once, and no worker is started for it", () => {
    const { searches, workers } = setUp();
    const length = registry.find((fn) => fn.name === "LENGTH");
    if (length === undefined) throw new Error("no LENGTH");
    expect(searches.answer(length, ["12 ft 6 in"])).toEqual(gives(12.5));
    expect(searches.explain(length, ["12 ft 6 in"])).toEqual(explain(length, ["12 ft 6 in"]));
    expect(workers).toHaveLength(0);
  });

  test("all that ask for the same share one search, and later it is remembered", async () => {
    const { fn, searches, last, made } = setUp();
    const first = searches.answer(fn, [3]);
    const second = searches.answer(fn, [3]);
    expect(first).toBeInstanceOf(Promise);
    last().ready();
    await last().answer();
    expect(await Promise.all([first, second])).toEqual([gives(6), gives(6)]);
    expect(last().asked).toHaveLength(1);
    expect(searches.answer(fn, [3])).toEqual(gives(6));
    expect(made()).toBe(1);
  });

  test("the worker is asked one thing at a time, the latest first", async () => {
    const { fn, searches, last, workers } = setUp();
    const all = [1, 2, 3].map((value) => searches.answer(fn, [value]));
    expect(last().asked.map(({ args }) => args[0])).toEqual([1]);
    last().ready();
    for (let i = 0; i < 3; i++) await last().answer();
    expect(last().asked.map(({ args }) => args[0])).toEqual([1, 3, 2]);
    expect(await Promise.all(all)).toEqual([gives(2), gives(4), gives(6)]);
    expect(workers).toHaveLength(1);
  });

  test("a refusal keeps its code and sentence, and is remembered too", async () => {
    const { fn, searches, last } = setUp();
    const asked = searches.answer(fn, [-1]);
    await last().answer();
    const refused = {
      ok: false,
      code: "#N/A",
      said: {
        what: expect.any(String),
        why: expect.stringContaining("there is none below 0"),
        todo: expect.any(String),
      },
    };
    expect(await asked).toEqual(refused);
    expect(searches.answer(fn, [-1])).toEqual(refused);
  });

  test("the working comes whole, and is kept for a while", async () => {
    const { fn, searches, last } = setUp();
    const asked = searches.explain(fn, [4]);
    await last().answer();
    expect(await asked).toEqual(explain(fn, [4]));
    expect(searches.explain(fn, [4])).toEqual(explain(fn, [4]));
    expect(last().asked).toHaveLength(1);
  });

  test("an answer to an earlier request is not taken for the present one", async () => {
    const { fn, searches, last } = setUp();
    const asked = searches.answer(fn, [5]);
    last().say({ turn: 999, found: { ok: true, value: 1 } });
    await last().answer();
    expect(await asked).toEqual(gives(10));
  });
});

describe("where the worker is of no use the page makes the search itself", () => {
  test("it cannot be started", async () => {
    const { fn } = doubling(`DOUBLE_${++count}`);
    let tries = 0;
    const searches = new Searches(() => {
      tries++;
      throw new Error("refused by the policy of the page");
    });
    const all = [1, 2].map((value) => searches.answer(fn, [value]));
    await vi.runAllTimersAsync();
    expect(await Promise.all(all)).toEqual([gives(2), gives(4)]);
    expect(tries).toBe(1);
  });

  test("its file does not load", async () => {
    const { fn, searches, last, workers } = setUp();
    const all = [1, 2].map((value) => searches.answer(fn, [value]));
    last().breakDown();
    await vi.runAllTimersAsync();
    expect(await Promise.all(all)).toEqual([gives(2), gives(4)]);
    expect(workers).toHaveLength(1);
    expect(last().ended).toBe(true);
  });

  test("it dies in a search: the next one gets a new worker, but not for ever", async () => {
    const { fn, searches, last, workers, made } = setUp();
    for (let i = 0; i < 5; i++) {
      const asked = searches.answer(fn, [i]);
      if (i < 3) {
        last().ready();
        last().breakDown();
      }
      await vi.runAllTimersAsync();
      expect(await asked).toEqual(gives(2 * i));
    }
    expect(workers).toHaveLength(3);
    expect(made()).toBe(5);
  });

  test("it stays silent, at the start or later", async () => {
    const { fn, searches, last, workers } = setUp();
    const early = searches.answer(fn, [1]);
    last().ready();
    await vi.advanceTimersByTimeAsync(50_000);
    expect(last().ended).toBe(false);
    await vi.advanceTimersByTimeAsync(11_000);
    expect(await early).toEqual(gives(2));
    const never = searches.answer(fn, [2]);
    expect(workers).toHaveLength(2);
    await vi.advanceTimersByTimeAsync(16_000);
    expect(await never).toEqual(gives(4));
    expect(workers.every((worker) => worker.ended)).toBe(true);
  });

  test("it does not know the function", async () => {
    const { fn, searches, last, workers } = setUp(false);
    const asked = searches.answer(fn, [7]);
    await last().answer();
    await vi.runAllTimersAsync();
    expect(await asked).toEqual(gives(14));
    expect(last().ended).toBe(false);
    expect(workers).toHaveLength(1);
  });

  test("the request cannot be sent", async () => {
    const { fn } = doubling(`DOUBLE_${++count}`);
    const worker = new FakeWorker([fn]);
    worker.postMessage = () => {
      throw new DOMException("no clone", "DataCloneError");
    };
    const searches = new Searches(() => worker);
    const asked = searches.answer(fn, [8]);
    await vi.runAllTimersAsync();
    expect(await asked).toEqual(gives(16));
  });
});
