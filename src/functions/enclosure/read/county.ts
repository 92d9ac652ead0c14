import { type County, counties } from "../../../core/enclosure/climate/county.ts";
import { BadInput } from "../../../core/kit/refusal.ts";
import { editDistance } from "./near.ts";
import { stateCode } from "./state.ts";

/** Counties of another name since the list of 2010, by state. */
const RENAMED: Readonly<Record<string, string>> = {
  "SD shannon": "oglalalakota",
  "AK wadehampton": "kusilvak",
  "FL dade": "miamidade",
  "DC washington": "districtofcolumbia",
  "DC washingtondc": "districtofcolumbia",
  "DC dc": "districtofcolumbia",
};

/**
 * The county of a name: with or without "County", with or without spaces, marks and accents; the state by its letters or its name.
 * @throws BadInput for a state or county that is not in the list, with near names
 */
export function readCounty(county: string, state: string): County {
  const code = stateCode(state);
  const own = counties().filter((c) => c.state === code);
  if (code === undefined || own.length === 0) {
    throw new BadInput(
      `"${state}" is not a state in the list`,
      "counties are listed by state, with the District of Columbia and Puerto Rico",
      "Write the state like NY or New York",
    );
  }
  const bare = keyOf(county);
  const wanted = RENAMED[`${code} ${bare}`] ?? bare;
  // A city of its own and a county may share a name: the whole name decides first, and the county stands for the bare name.
  const fits = own.filter((c) => keyOf(c.name) === wanted);
  const found = fits.find((c) => whole(c.name) === whole(county)) ?? fits[0];
  if (found !== undefined) return found;
  const near = own.filter((c) => isNear(wanted, keyOf(c.name))).map((c) => c.name);
  throw new BadInput(
    `"${county}" is not a county of ${code} in the list`,
    `${own.length} counties are listed there`,
    near.length > 0 ? `Near names: ${near.slice(0, 5).join(", ")}` : "Check the spelling",
  );
}

function isNear(wanted: string, known: string): boolean {
  if (wanted === "") return false;
  return known.startsWith(wanted.slice(0, 5)) || editDistance(wanted, known) <= (wanted.length < 6 ? 1 : 2);
}

function whole(name: string): string {
  return name
    .normalize("NFD")
    .replace(/[\u0300-\u036f]/g, "")
    .toLowerCase()
    .replace(/^saint /, "st ")
    .replace(/^sainte /, "ste ")
    .replace(/[^a-z0-9]/g, "");
}

function keyOf(name: string): string {
  return whole(
    name
      .trim()
      .replace(/\s+/g, " ")
      .replace(/ (county|parish|city and borough|borough|census area|municipality|municipio)$/i, ""),
  );
}
