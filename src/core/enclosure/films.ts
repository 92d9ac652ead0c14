import { BadInput } from "../kit/refusal.ts";
import { R_IP_IN_RSI } from "./border.ts";
import {
  ASHRAE_FILM_CLAUSE,
  ASHRAE_OUTDOOR_R_IP,
  ASHRAE_STILL_AIR_R_IP,
  FILM_EMITTANCES,
  type FilmEmittance,
  type HeatFlow,
  ISO_FILM_CLAUSE,
  ISO_MOLD_FILM_CLAUSE,
  ISO_RSE_M2KW,
  ISO_RSI_M2KW,
  ISO_RSI_MOLD_M2KW,
} from "./tables/films.ts";

/** The air film at a surface. */
export interface Film {
  /** h ft2 F/Btu */
  readonly rIp: number;
  readonly flow: HeatFlow;
  readonly says: string;
  readonly clause: string;
  /** film of still air for the same direction: what stands outside a ventilated cavity */
  readonly stillAirRIp: number;
}

const FLOW_WORDS: Readonly<Record<string, HeatFlow>> = {
  wall: "horizontal",
  horizontal: "horizontal",
  ceiling: "up",
  roof: "up",
  up: "up",
  floor: "down",
  down: "down",
  "45 up": "45 up",
  "sloped roof": "45 up",
  "45 down": "45 down",
};
const ISO_FLOW: Readonly<Record<HeatFlow, "up" | "horizontal" | "down">> = {
  up: "up",
  "45 up": "up",
  horizontal: "horizontal",
  "45 down": "down",
  down: "down",
};

export const INSIDE_FILM_SAYS =
  'air film inside: an R, or wall, ceiling, floor, 45 up, 45 down (with a surface emittance 0.9, 0.2 or 0.05 behind, such as "wall 0.05"), ISO wall, ISO ceiling, ISO floor, ISO mold, or none';
export const OUTSIDE_FILM_SAYS = "air film outside: an R, or winter, summer, ISO, still air, or none";

function plainNumber(text: string): number | undefined {
  return /^r?-?(\d+\.?\d*|\.\d+)$/.test(text) ? Number(text.replace(/^r-?/, "")) : undefined;
}

function stillAir(flow: HeatFlow, emittance: FilmEmittance): Film {
  const rIp = ASHRAE_STILL_AIR_R_IP[flow][emittance];
  const says = `still air, heat flow ${flow}, emittance ${emittance}`;
  return { rIp, flow, says, clause: ASHRAE_FILM_CLAUSE, stillAirRIp: ASHRAE_STILL_AIR_R_IP[flow][0.9] };
}

/**
 * Reads the film at the inside surface. A bare number is an R; its direction is then taken as that of a wall.
 * @throws BadInput for a word that names none
 * Source: ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10; ISO 6946:2017 Table 7; ISO 13788:2012 for "ISO mold".
 */
export function insideFilm(text: string): Film {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, " ");
  const rIp = tidy === "none" ? 0 : plainNumber(tidy);
  const wall = ASHRAE_STILL_AIR_R_IP.horizontal[0.9];
  if (rIp !== undefined) return { rIp, flow: "horizontal", says: "as given", clause: "argument", stillAirRIp: wall };
  if (/^iso mou?ld$/.test(tidy)) {
    const mold = ISO_RSI_MOLD_M2KW * R_IP_IN_RSI;
    const stillAirRIp = ISO_RSI_M2KW.horizontal * R_IP_IN_RSI;
    return { rIp: mold, flow: "horizontal", says: "ISO mold check", clause: ISO_MOLD_FILM_CLAUSE, stillAirRIp };
  }
  const iso = tidy.startsWith("iso ");
  const words = iso ? tidy.slice(4) : tidy;
  const emittance = iso ? 0.9 : FILM_EMITTANCES.find((e) => words.endsWith(` ${e}`) || words.endsWith(` ${e}0`));
  const word = words.replace(/ 0?\.\d+$/, "");
  const flow = Object.hasOwn(FLOW_WORDS, word) ? FLOW_WORDS[word] : undefined;
  if (flow !== undefined && (word === words || emittance !== undefined)) {
    if (!iso) return stillAir(flow, emittance ?? 0.9);
    const isoR = ISO_RSI_M2KW[ISO_FLOW[flow]] * R_IP_IN_RSI;
    return { rIp: isoR, flow, says: `ISO, heat flow ${flow}`, clause: ISO_FILM_CLAUSE, stillAirRIp: isoR };
  }
  throw unknown("inside", text, "wall, ceiling, floor, 45 up, 45 down, ISO wall, none or an R such as 0.68");
}

/**
 * Reads the film at the outside surface.
 * @param inside gives the direction for "still air"
 * @throws BadInput for a word that names none
 */
export function outsideFilm(text: string, inside: Film): Film {
  const tidy = text.trim().toLowerCase().replace(/\s+/g, " ");
  const { flow, stillAirRIp } = inside;
  const rIp = tidy === "none" ? 0 : plainNumber(tidy);
  if (rIp !== undefined) return { rIp, flow, says: "as given", clause: "argument", stillAirRIp };
  if (tidy === "winter" || tidy === "summer") {
    const says = tidy === "winter" ? "winter, 15 mph wind" : "summer, 7.5 mph wind";
    return { rIp: ASHRAE_OUTDOOR_R_IP[tidy], flow, says, clause: ASHRAE_FILM_CLAUSE, stillAirRIp };
  }
  if (tidy === "iso") {
    return { rIp: ISO_RSE_M2KW * R_IP_IN_RSI, flow, says: "ISO outside", clause: ISO_FILM_CLAUSE, stillAirRIp };
  }
  if (tidy === "still air") {
    return { rIp: stillAirRIp, flow, says: "still air as inside", clause: inside.clause, stillAirRIp };
  }
  throw unknown("outside", text, "winter, summer, ISO, still air, none or an R such as 0.17");
}

function unknown(side: string, text: string, wants: string): BadInput {
  return new BadInput(
    `The ${side} film "${text}" is not known`,
    "an air film is an R or one of a few words",
    `Use ${wants}`,
  );
}
