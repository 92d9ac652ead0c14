import { Searches } from "../../../src/workbook/searches/searches.ts";
import { slow } from "./slow.ts";

const searches = new Searches(() => new Worker("worker.js"));

/** Asks for searches; gives their outcomes and how many turns the page got meanwhile. */
async function ask(...ms: number[]): Promise<{ outcomes: unknown[]; turns: number }> {
  let turns = 0;
  const tick = setInterval(() => turns++, 10);
  const outcomes = await Promise.all(ms.map((time) => searches.answer(slow, [time])));
  clearInterval(tick);
  return { outcomes, turns };
}

Object.assign(window, { ask });
