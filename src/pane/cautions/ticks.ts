import type { Host } from "../../workbook/host.ts";
import { isSeen, readSeen, SEEN, type Seen, seenText, stillThere, tick } from "../../workbook/seen.ts";
import type { Findings, FoundSentence } from "./findings.ts";

/** What the reader has ticked as seen, kept in the workbook where the host can. */
export class Ticks {
  #host: Host | undefined;
  #seen: Seen = new Map();
  readonly #say: (sentence: string) => void;

  /** @param say tells the user why a tick could not be kept */
  constructor(say: (sentence: string) => void) {
    this.#say = say;
  }

  /** Reads the ticks of the host's workbook, which may be another one by now. */
  async read(host: Host): Promise<void> {
    if (host !== this.#host) this.#seen = new Map();
    this.#host = host;
    if (host.kept === undefined) return;
    try {
      const seen = readSeen(await host.kept(SEEN));
      if (host === this.#host) this.#seen = seen;
    } catch {
      // While a cell is being typed in the host refuses; what was read before stands.
    }
  }

  has(found: FoundSentence): boolean {
    return isSeen(this.#seen, ticked(found));
  }

  tick(found: FoundSentence): Promise<void> {
    return this.#keep(tick(this.#seen, ticked(found)));
  }

  /** Drops the ticks of what changed or is gone. Only for findings of the whole workbook: what has not calculated yet is not gone. */
  async drop(whole: Findings): Promise<void> {
    const { mixed, inputCautions, standingCautions, assumptions } = whole;
    const left = stillThere(this.#seen, [...mixed, ...inputCautions, ...standingCautions, ...assumptions].map(ticked));
    if (left.size < this.#seen.size) await this.#keep(left);
  }

  async #keep(seen: Seen): Promise<void> {
    this.#seen = seen;
    try {
      await this.#host?.keep?.(SEEN, seenText(seen));
    } catch (error) {
      this.#say(`The tick is not kept in the workbook: ${error instanceof Error ? error.message : error}`);
    }
  }
}

function ticked({ sentence, cells }: FoundSentence) {
  return { sentence, cells: cells.length };
}
