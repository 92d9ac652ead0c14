import { Searches } from "../../../src/hosts/searches.ts";
import { slow } from "./slow.ts";

const searches = new Searches(() => new Worker("worker.js"));

/** Asks for searches; gives their outcomes and the longest time in which the page did not get its turn. */
async function ask(...ms: number[]): Promise<{ outcomes: unknown[]; stoodStill: number }> {
  let stoodStill = 0;
  let last = performance.now();
  const tick = setInterval(() => {
    stoodStill = Math.max(stoodStill, performance.now() - last);
    last = performance.now();
  }, 10);
  const outcomes = await Promise.all(ms.map((time) => searches.answer(slow, [time])));
  clearInterval(tick);
  return { outcomes, stoodStill: Math.max(stoodStill, performance.now() - last) };
}

Object.assign(window, { ask });
