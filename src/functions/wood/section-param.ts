import { BadInput, OutOfRange } from "../../core/kit/refusal.ts";
import { nominalSection, type Section } from "../../core/wood/section.ts";
import { capital, oneCell } from "../declare/cell.ts";
import type { Param } from "../declare/param.ts";

const WANTS = "a section such as 2x10, 3-2x6, or in actual inches 5.25 x 11.875 or 3-1/2 x 9-1/4";

/** A whole number, a decimal, or a whole number with a fraction: 2, 1.75, 3-1/2, 3 1/2. */
const SIZE = String.raw`\d+(?:\.\d+)?(?:[ -]\d+/\d+)?|\.\d+|\d+/\d+`;
const PLIES = String.raw`(?:\(?(\d)\)?\s*(?:-|ply|plies|no\.?)?\s*)?`;
const ONE = new RegExp(`^(${SIZE})x(${SIZE})(mm)?$`);
const SEVERAL = new RegExp(`^${PLIES}(${SIZE})x(${SIZE})(mm)?$`);
const MM_IN_INCH = 25.4;
const MOST_PLIES = 8;

/** Work on a member that its section cannot show: the factors of such members are not held. */
const WORKED = /\b(notch|drill|taper|bore|incis|curved)/i;

/** A rectangular section by its name. */
export const section: Param<Section, string> = {
  kind: "text",
  says: "section: nominal as 2x10 or 3-2x6 (three plies), actual inches with a decimal or fraction; depth last",
  unit: "",
  read(raw, at) {
    const text = String(oneCell(raw, at, WANTS)).trim();
    if (WORKED.test(text)) throw worked(at, text);
    const value = readSection(text);
    if (value === undefined) {
      throw new BadInput(`${capital(at)} is "${text.slice(0, 40)}"`, "it is not read as a section", `Write ${WANTS}`);
    }
    return { value, shown: text };
  },
};

function worked(at: string, text: string): OutOfRange {
  return new OutOfRange(
    `${capital(at)} is "${text.slice(0, 40)}"`,
    "notched, drilled, tapered and curved members have rules of their own (NDS 3.2.3, 3.4.3, 5.3) that are not held here",
    "Check the reduced section with an engineer; give a plain section for a first pass",
  );
}

/** Reads a section, or undefined where the text is none. @throws BadInput for sizes that cannot be */
export function readSection(text: string): Section | undefined {
  const tidy = text
    .toLowerCase()
    .replace(/\s+by\s+/g, "x")
    .replace(/(\d)\s*(?:inches|inch|in\.?|"|″|”)(?=\s*(?:x|×|\*|$))/g, "$1")
    .replace(/\s*[x×*]\s*/g, "x")
    .replace(/\s*mm$/, "mm")
    .trim();
  const one = ONE.exec(tidy);
  if (one !== null) return made(text, 1, one[1] ?? "", one[2] ?? "", one[3] !== undefined);
  const several = SEVERAL.exec(tidy);
  if (several === null) return undefined;
  return made(text, Number(several[1] ?? 1), several[2] ?? "", several[3] ?? "", several[4] !== undefined);
}

function made(name: string, plies: number, first: string, second: string, metric: boolean): Section {
  if (plies < 1 || plies > MOST_PLIES) {
    throw new BadInput(`${name} has ${plies} plies`, `from 1 to ${MOST_PLIES} can be worked with`, "Check the section");
  }
  const whole = /^\d+$/.test(first) && /^\d+$/.test(second);
  if (whole && !metric) return nominalSection(name, plies, Number(first), Number(second));
  const unit = metric ? MM_IN_INCH : 1;
  const [plyIn, depthIn] = [sizeOf(first) / unit, sizeOf(second) / unit];
  if (!(plyIn >= LEAST_IN && plyIn <= MOST_IN && depthIn >= LEAST_IN && depthIn <= MOST_IN)) {
    throw new BadInput(
      `${name} is read as ${plyIn} x ${depthIn} in`,
      `sizes from ${LEAST_IN} to ${MOST_IN} in can be worked with`,
      "Check the section, or write mm behind it",
    );
  }
  return { name, plies, plyIn, depthIn, nominal: undefined };
}

const LEAST_IN = 0.25;
const MOST_IN = 60;

function sizeOf(text: string): number {
  const parts = text.split(/[ -]/).map((part) => {
    const [over = 0, under = 1] = part.split("/").map(Number);
    return over / under;
  });
  return parts.reduce((sum, part) => sum + part, 0);
}
