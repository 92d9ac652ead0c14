import { codeParts, codeSources } from "../../core/enclosure/loss/energy-code.ts";
import { type UaRow, uaAgainstCode } from "../../core/enclosure/loss/ua-code.ts";
import { BadInput } from "../../core/kit/refusal.ts";
import { orElse } from "../basis/term.ts";
import { preliminary } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { type AreaRow, areas } from "./areas.ts";
import { PART_WORDS } from "./code.ts";
import { familyFunction } from "./family.ts";
import { shown } from "./shown.ts";
import { climateZone, countyTerms, mapOf, zoneOf } from "./terms/zone-terms.ts";

const columns = columnsOf<UaRow>(
  ["part", "", (r) => r.name],
  ["area", "ft2", (r) => r.areaFt2],
  ["U", "Btu/(h ft2 F)", (r) => r.u],
  ["UA", "Btu/(h F)", (r) => r.ua],
  ["code U", "Btu/(h ft2 F)", (r) => r.codeU],
  ["code UA", "Btu/(h F)", (r) => r.codeUa],
  ["verdict", "", (r) => r.verdict],
  ["SHGC", "", (r) => r.shgc],
  ["code SHGC", "", (r) => r.codeShgc],
);

const PARTS = codeParts("U").filter((p) => p !== "SHGC" && !p.includes("slab edge"));

/** The part of the code's table: as the fourth column says, else by the part's own name or its last word. */
function codePartOf(row: AreaRow): string {
  const asked = (row.codePart ?? row.part).trim().toLowerCase();
  const words = row.codePart === undefined ? [asked, asked.split(/\s+/).at(-1) ?? ""] : [asked];
  for (const word of words) {
    const found =
      PARTS.find((p) => p.toLowerCase() === word) ?? (Object.hasOwn(PART_WORDS, word) ? PART_WORDS[word] : undefined);
    if (found !== undefined) return found;
  }
  throw new BadInput(
    `The code part of ${row.part} in row ${row.row} is not known`,
    `the code's table lists ${PARTS.join(", ")}`,
    "Write one of these in the codePart column",
  );
}

const uaCode = familyFunction({
  name: "UA_CODE",
  summary:
    "Whole-house trade-off: U A of every part against the energy code's, windows by their mean U and SHGC, with the total and the verdict.",
  params: { areas: areas() },
  placed: { climateZone, energyCode: orElse("energy code") },
  named: countyTerms,
  returns: columns.table(
    "a row for each part, the means of parts that share one of the code's, then the total with the verdict",
  ),
  sources: [
    "IECC R402.1.5 (total UA alternative); R402.3.1 and R402.3.2 (U and SHGC of fenestration by area)",
    ...codeSources("U"),
  ],
  cautions: [preliminary("energy code")],
  example: {
    args: {
      areas: [
        ["north side", 1000, 0.05, "wood wall"],
        ["glass", 100, 0.3, "window"],
      ],
      climateZone: "4C",
      energyCode: "Washington 2021",
    },
    gives: [
      ["north side", 1000, 0.05, 50, 0.056, 56, "within the code's U"],
      ["glass", 100, 0.3, 30, 0.3, 30, "within the code's U"],
      ["total", 1100, 80 / 1100, 80, 86 / 1100, 86, "met, 7 % under the code"],
    ],
    within: 1e-9,
    source: "Washington State Energy Code 2021, WAC 51-11R-40211: U 0.056 and 0.30; sums by exact arithmetic",
  },
  refuses: [
    {
      args: {
        areas: [
          ["north side", 1000, 0.05, "wood wall"],
          ["glass", 0, 0.3, "window", 0.3],
        ],
      },
      says: "a mean weighted by area needs one",
    },
    { args: { areas: [["north side", 0, 0.05, "wood wall"]] }, says: "the UA of a building goes by its areas" },
    {
      args: {
        areas: [
          ["east glass", 10, 0.3, "window", 0.3],
          ["west glass", 10, 0.3, "window"],
        ],
      },
      says: "the code holds the mean of all windows, weighted by area, against its limit",
    },
    { args: { climateZone: "7" }, says: "Washington State Energy Code 2021, WAC 51-11R-40211 is kept for zones 4C, 5" },
    { args: { energyCode: "2024" }, says: "is not kept for IECC 2024" },
    {
      args: {
        areas: [
          ["north side", 1000, 0, "wood wall"],
          ["glass", 100, 0.3, "window"],
        ],
      },
      says: "it must be above 0 Btu/(h ft2 F) and at most 10 Btu/(h ft2 F)",
    },
    { args: { climateZone: "1A", energyCode: "2018" }, says: "IECC 2018 Tables R402.1.2 and R402.1.4 sets none there" },
  ],
  notFor: "Commercial buildings, and paths by energy cost or rating index, are other ways to comply.",
  run(a, tape) {
    const parts = a.areas.map((r) => ({
      name: r.part,
      areaFt2: r.area,
      u: r.U,
      codePart: codePartOf(r),
      shgc: r.SHGC,
    }));
    const rows = uaAgainstCode(parts, zoneOf(a, mapOf(a.energyCode), tape), a.energyCode, tape);
    return shown(columns, rows, tape, { symbol: "UA", rule: "each part, then the total", clause: "IECC R402.1.5" });
  },
});

export const enclosureUaFunctions = [uaCode] as const;
