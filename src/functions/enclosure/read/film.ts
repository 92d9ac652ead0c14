import {
  type Film,
  givenFilm,
  isoFilm,
  moldFilm,
  outdoorFilm,
  stillAirFilm,
} from "../../../core/enclosure/layers/films.ts";
import { FILM_EMITTANCES, type HeatFlow } from "../../../core/enclosure/tables/films.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { quantityIn } from "./figure.ts";

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

export const INSIDE_FILM_SAYS =
  'air film inside: an R (0.68, RSI 0.12), or wall, roof, floor, 45 up, 45 down (with a surface emittance 0.9, 0.2 or 0.05 behind, such as "wall 0.05"), ISO wall, ISO roof, ISO floor, ISO mold, or none';
export const OUTSIDE_FILM_SAYS =
  "air film outside: an R (0.17, RSI 0.04), or winter, summer, ISO, still air (wall, roof and floor are the winter wind), or none";

const tidied = (text: string) => text.trim().toLowerCase().replace(/\s+/g, " ");

/** `0.68`, `R-0.68`, `RSI 0.12`, `0.12 m2K/W`; `none` is 0. */
function readR(tidy: string): number | undefined {
  if (tidy === "none") return 0;
  const bare = /^(?:r-?)?(\d+\.?\d*|\.\d+)$/.exec(tidy);
  if (bare !== null) return Number(bare[1]);
  const rsi = /^rsi\s*-?\s*(\d+\.?\d*|\.\d+)$/.exec(tidy);
  // A bare negative number would pass the reader of quantities.
  return tidy.startsWith("-") ? undefined : quantityIn(rsi === null ? tidy : `${rsi[1]} RSI`, "R");
}

/**
 * Reads the film at the inside surface. A bare number is an R; its direction is that of the table's film with this R, else that of a wall.
 * @throws BadInput for a word that names none
 */
export function readInsideFilm(text: string): Film {
  const tidy = tidied(text);
  const rIp = readR(tidy);
  if (rIp !== undefined) return givenFilm("inside", rIp);
  if (/^iso mou?ld$/.test(tidy)) return moldFilm();
  const iso = tidy.startsWith("iso ");
  const words = iso ? tidy.slice(4) : tidy;
  const emittance = iso ? undefined : FILM_EMITTANCES.find((e) => words.endsWith(` ${e}`) || words.endsWith(` ${e}0`));
  const word = words.replace(/ 0?\.\d+$/, "");
  const flow = Object.hasOwn(FLOW_WORDS, word) ? FLOW_WORDS[word] : undefined;
  if (flow !== undefined && (word === words || emittance !== undefined)) {
    return iso ? isoFilm(flow) : stillAirFilm(flow, emittance ?? 0.9);
  }
  throw unknown("inside", text, "wall, roof, floor, 45 up, 45 down, ISO wall, none or an R such as 0.68");
}

/**
 * Reads the film at the outside surface.
 * @param inside gives the direction for "still air"
 * @throws BadInput for a word that names none
 */
export function readOutsideFilm(text: string, inside: Film): Film {
  const tidy = tidied(text);
  const rIp = readR(tidy);
  if (rIp !== undefined) return givenFilm("outside", rIp, inside);
  // The wind outdoors leaves the same film on every part, so a part's name stands for winter.
  if (tidy === "winter" || Object.hasOwn(FLOW_WORDS, tidy)) return outdoorFilm("winter", inside);
  if (tidy === "summer" || tidy === "iso" || tidy === "still air") return outdoorFilm(tidy, inside);
  throw unknown("outside", text, "winter, summer, ISO, still air, none or an R such as 0.17");
}

function unknown(side: string, text: string, wants: string): BadInput {
  return new BadInput(
    `The ${side} film "${text}" is not known`,
    "an air film is an R or one of a few words",
    `Use ${wants}`,
  );
}
