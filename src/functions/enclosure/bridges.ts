import { W_MK_IN_BTU_FT } from "../../core/enclosure/air/si.ts";
import { type ThermalBridge, thermalBridges } from "../../core/enclosure/loss/thermal-bridges.ts";
import { JUNCTION_SOURCE, JUNCTIONS } from "../../core/enclosure/tables/thermal-bridges.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import type { Tape } from "../../core/kit/tape.ts";
import { preliminary, quantityOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { length, number, quantity } from "../declare/scalar.ts";
import { type RowOf, table } from "../declare/table.ts";
import { text } from "../declare/word.ts";
import { familyFunction } from "./family.ts";

const columns = {
  bridge: text({
    says: "name of the junction or fixing; lintel, jamb, ground floor (slab edge), floor band, inside corner have built-in figures",
    heads: ["name", "junction", "detail"],
  }),
  psi: optional(
    quantity("Btu/(h ft F)", {
      says: "psi, loss along a line; blank for a built-in figure",
      min: -1,
      max: 2,
      usual: { min: -0.2, max: 0.7, ask: "is it in Btu/(h ft F)?" },
    }),
    undefined,
    "",
  ),
  length: optional(
    length("ft", {
      says: "length of the line",
      min: 0,
      max: 1e5,
      usual: { min: 0.5, max: 2000, ask: "is it in feet, or its cell blank?" },
      heads: ["l", "length ft"],
    }),
    undefined,
    "",
  ),
  chi: optional(
    number({ says: "chi, loss of a point, Btu/(h F)", min: 0, max: 2, heads: ["chi each"] }),
    undefined,
    "",
  ),
  count: optional(number({ says: "how many points", min: 0, max: 1e6, heads: ["number", "n"] }), undefined, ""),
};

function bridgeOf(r: RowOf<typeof columns>, tape: Tape | undefined): ThermalBridge {
  const { row, bridge: name } = r;
  const points = r.chi === undefined ? undefined : { chi: r.chi, count: need(r.count, "count", name, row) };
  if (r.psi === undefined && points !== undefined) return { row, name, line: undefined, points };
  const psi = r.psi === undefined ? builtIn(name, row, tape) : { psi: r.psi, source: "the row's own figure" };
  return { row, name, line: { ...psi, lengthFt: need(r.length, "length", name, row) }, points };
}

function need(value: number | undefined, what: string, name: string, row: number): number {
  if (value !== undefined) return value;
  throw new BadInput(
    `The ${name} in row ${row} of bridges has no ${what}`,
    "a line counts by its length, a point by its count",
    `Fill in the ${what}`,
  );
}

/** The usual figure of a junction whose detail is not known; the working tells that of approved details. */
function builtIn(name: string, row: number, tape: Tape | undefined): { psi: number; source: string } {
  const word = name.trim().toLowerCase();
  const found = JUNCTIONS.find((j) => j.name === word || j.also.includes(word));
  if (found === undefined) {
    throw new BadInput(
      `The ${name} in row ${row} of bridges has neither psi nor chi`,
      `built-in figures are those of ${JUNCTIONS.map((j) => j.name).join(", ")}`,
      "Give its psi with a length, or its chi with a count",
    );
  }
  tape?.assume(
    `${found.name}: psi ${found.usualWmK} W/(m K) where nothing is known of the detail; ${found.approvedWmK} for approved details (${JUNCTION_SOURCE})`,
  );
  return { psi: found.usualWmK / W_MK_IN_BTU_FT, source: JUNCTION_SOURCE };
}

const thermalBridgesFunction = familyFunction({
  name: "THERMAL_BRIDGES",
  summary: "Heat per degree that junctions and fixings pass beside the plane parts: the bridges of HEATLOSS.",
  params: { bridges: table(columns, { says: "junctions and fixings, one row each", maxRows: 200 }) },
  returns: quantityOf("Btu/(h F)", "sum of psi L and chi n"),
  sources: ["ISO 13789:2017 (H_tb = sum(psi L) + sum(chi n))", `Built-in psi: ${JUNCTION_SOURCE}`],
  cautions: [preliminary("heat loss")],
  example: {
    args: { bridges: [["jamb", null, "30.48 m"]] },
    gives: 5.778,
    within: 0.03,
    source: "UK SAP 2012 Table K1: jamb, default psi 0.10 W/(m K); over 30.48 m that is 3.048 W/K or 5.778 Btu/(h F)",
  },
  refuses: [
    { args: { bridges: [["clip", "", "30 ft"]] }, says: "has neither psi nor chi" },
    { args: { bridges: [["jamb", "", ""]] }, says: "a line counts by its length, a point by its count" },
    { args: { bridges: [["jamb", "", -1]] }, says: "it must be from 0 to 100000 ft" },
  ],
  notFor: "A junction that no list draws, or one of steel, needs a two-dimensional calculation.",
  run: (a, tape) =>
    thermalBridges(
      a.bridges.map((r) => bridgeOf(r, tape)),
      tape,
    ),
});

export const enclosureBridgeFunctions = [thermalBridgesFunction] as const;
