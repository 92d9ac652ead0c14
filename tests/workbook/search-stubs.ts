import { OutOfRange } from "../../src/core/kit/refusal.ts";
import { type CellFunction, cellFunction, quantityOf } from "../../src/functions/declare/cell-function.ts";
import { number } from "../../src/functions/declare/scalar.ts";
import { READY, reply, type SearchReply, type SearchRequest } from "../../src/workbook/searches/messages.ts";
import type { SearchWorker } from "../../src/workbook/searches/searches.ts";

/** A search that doubles a number, and counts how often this thread makes it. */
export function doubling(name: string): { fn: CellFunction; made: () => number } {
  let made = 0;
  const fn = cellFunction({
    name,
    family: "Takeoff and cutting",
    summary: "Twice the number.",
    params: { value: number({ says: "a number" }) },
    returns: quantityOf("", "twice the number"),
    sources: ["Arithmetic"],
    example: { args: { value: 2 }, gives: 4, within: 0, source: "exact arithmetic" },
    heavy: true,
    refuses: [{ args: {}, says: "" }],
    notFor: "none, because it is for tests.",
    run: ({ value }, tape) => {
      made++;
      if (value < 0) throw new OutOfRange(`The number is ${value}`, "there is none below 0", "Use another");
      tape?.step("d", "2 value", 2 * value, "", "arithmetic");
      return 2 * value;
    },
  });
  return { fn, made: () => made };
}

/** A worker in this thread that answers when the test says so. */
export class FakeWorker implements SearchWorker {
  onmessage: SearchWorker["onmessage"] = null;
  onerror: SearchWorker["onerror"] = null;
  onmessageerror: SearchWorker["onmessageerror"] = null;
  readonly asked: SearchRequest[] = [];
  ended = false;
  readonly #functions: readonly CellFunction[];

  constructor(functions: readonly CellFunction[]) {
    this.#functions = functions;
  }

  postMessage(request: SearchRequest): void {
    this.asked.push(structuredClone(request));
  }

  terminate(): void {
    this.ended = true;
  }

  ready(): void {
    this.say(READY);
  }

  /** Answers the latest request. */
  async answer(): Promise<void> {
    const request = this.asked.at(-1);
    if (request === undefined) throw new Error("nothing was asked");
    this.say(structuredClone(await reply(request, this.#functions)));
  }

  say(data: SearchReply | typeof READY): void {
    this.onmessage?.({ data } as MessageEvent<SearchReply>);
  }

  breakDown(): void {
    this.onerror?.({ preventDefault: () => {} } as ErrorEvent);
  }
}
