import { countyZone } from "../../core/enclosure/climate/county.ts";
import { codeParts, codeSources, codeValue } from "../../core/enclosure/loss/energy-code.ts";
import { type RetarderRow, retarderClass, retarderRule, SHEATHINGS } from "../../core/enclosure/moisture/retarder.ts";
import { leastShareAboveDeck, unventedRoofR } from "../../core/enclosure/moisture/unvented-roof.ts";
import { DECK_RULE, RETARDER_CLAUSE, UNVENTED_ROOF_CLAUSE } from "../../core/enclosure/tables/retarders.ts";
import { ifGiven, needed, orElse } from "../basis/term.ts";
import { numberOrText, preliminary, quantityOf, textOf } from "../declare/cell-function.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { number, quantity } from "../declare/scalar.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { readCounty } from "./read/county.ts";
import { shown } from "./shown.ts";
import { placeOf } from "./terms/climate-terms.ts";
import { climateZone, countyTerms, mapOf, zoneOf } from "./terms/zone-terms.ts";

const LOCAL = preliminary("energy and moisture code");

/** Other words for the parts of the code's tables. */
export const PART_WORDS: Readonly<Record<string, string>> = {
  roof: "ceiling",
  attic: "ceiling",
  wall: "wood wall",
  "frame wall": "wood wall",
  "wood frame wall": "wood wall",
  "wood-frame wall": "wood wall",
  "above-grade wall": "wood wall",
  fenestration: "window",
  windows: "window",
  glazing: "window",
  door: "window",
  doors: "window",
  basement: "basement wall",
  crawlspace: "crawl wall",
  "crawlspace wall": "crawl wall",
  "crawl space wall": "crawl wall",
};

const partOf = (kind: "R" | "U") => {
  const parts = codeParts(kind);
  const also = Object.fromEntries(Object.entries(PART_WORDS).filter(([, part]) => parts.includes(part)));
  return choice(parts, { says: "part of the enclosure", also });
};

const codeTerms = { climateZone, energyCode: orElse("energy code") };

const uCode = familyFunction({
  name: "U_CODE",
  summary: "The U-factor that the residential energy code allows at most, by climate zone and part.",
  params: { part: partOf("U") },
  placed: codeTerms,
  named: countyTerms,
  returns: numberOrText("Btu/(h ft2 F)", "greatest U-factor (F of a slab edge), or NR where there is none"),
  sources: codeSources("U"),
  cautions: [LOCAL],
  example: {
    args: { part: "wood wall", climateZone: "4C", energyCode: "Washington 2021" },
    gives: 0.056,
    within: 0.0005,
    source: "Washington State Energy Code 2021, WAC 51-11R-40211",
  },
  refuses: [
    { args: { part: "SHGC" }, says: "what is kept: window, skylight, ceiling, wood wall, floor, slab edge," },
    { args: { climateZone: "7" }, says: "Washington State Energy Code 2021, WAC 51-11R-40211 is kept for zones 4C, 5" },
    { args: { energyCode: "2024" }, says: "is not kept for IECC 2024" },
    { args: { part: "tall" }, says: "it must be one of" },
  ],
  notFor: "Commercial buildings and steel framing have tables of their own, which are not held here.",
  run: (a, tape) => codeValue("U", zoneOf(a, mapOf(a.energyCode), tape), a.part, a.energyCode, tape),
});

const rCode = familyFunction({
  name: "R_CODE",
  summary: "The insulation that the residential energy code asks, by climate zone and part.",
  params: { part: partOf("R") },
  placed: codeTerms,
  named: countyTerms,
  returns: numberOrText("h ft2 F/Btu", 'least R; "13+5" is cavity and continuous, "20 or 13+5" a choice'),
  sources: codeSources("R"),
  cautions: [LOCAL],
  example: {
    args: { part: "ceiling", climateZone: "5", energyCode: "2018" },
    gives: 49,
    within: 0,
    source: "IECC/IRC 2018 Table R402.1.2 = N1102.1.2, as printed in a municipal code",
  },
  refuses: [
    { args: { climateZone: "0A" }, says: "IECC/IRC 2018 Table R402.1.2 (N1102.1.2) is kept for zones 1, 2, 3," },
    { args: { part: "heated slab" }, says: "what is kept: ceiling, wood wall, mass wall, floor, basement wall," },
    { args: { energyCode: "Washington 2021" }, says: "no R table of that edition is kept" },
    { args: { climateZone: "tall" }, says: "zones run from 0 to 8, with A moist, B dry or C marine behind" },
    { args: { part: "tall" }, says: "it must be one of ceiling, wood wall, mass wall, floor, basement" },
  ],
  notFor: "Commercial buildings and steel framing have tables of their own; a whole-house trade-off takes UA_CODE.",
  run: (a, tape) => codeValue("R", zoneOf(a, mapOf(a.energyCode), tape), a.part, a.energyCode, tape),
});

const climateZoneFunction = familyFunction({
  name: "CLIMATE_ZONE",
  summary: "Climate zone of a US county, on the map of the energy code that holds.",
  params: {},
  placed: { county: needed("county"), state: needed("state") },
  named: { energyCode: orElse("energy code") },
  returns: textOf("zone with its moisture regime, such as 5A"),
  sources: [
    "US Department of Energy, climate zones by county, 2010 (CC0 data package)",
    "national laboratory report PNNL-33270 (2022), counties of the 2021 map",
  ],
  example: {
    args: { county: "Tompkins", state: "NY", energyCode: "2018" },
    gives: "6A",
    within: 0,
    source: "US Department of Energy, climate zones by county, 2010: Tompkins County, New York, zone 6, moist",
  },
  refuses: [
    { args: { state: "6" }, says: "counties are listed by state, with the District of Columbia and Puerto Rico" },
    { args: { county: "6" }, says: "62 counties are listed there" },
    { args: { energyCode: "tall" }, says: "it must be one of 2012, 2015, 2018, 2021, 2024, Idaho 2018," },
  ],
  notFor: "Outside the United States, and where a state draws its own zones, the state's text decides.",
  run: (a, tape) => countyZone(readCounty(a.county, a.state), mapOf(a.energyCode), tape),
});

const retarderClassFunction = familyFunction({
  name: "RETARDER_CLASS",
  summary: "Vapor retarder class I, II or III of a permeance, or none.",
  params: {
    permeance: quantity("perm", {
      says: "dry-cup permeance (ASTM E96 procedure A)",
      min: 0,
      max: 1e6,
      usual: { min: 0, max: 500, ask: "is it in perm?" },
    }),
  },
  returns: textOf("I, II, III or none"),
  sources: ["IRC 2021 R202 and Table R702.7(1): I to 0.1 perm, II to 1.0, III to 10"],
  example: { args: { permeance: 0.06 }, gives: "I", within: 0, source: "IRC 2021 R202: class I is 0.1 perm or less" },
  refuses: [
    { args: { permeance: -1 }, says: "it must be from 0 to 1000000 perm" },
    { args: { permeance: null }, says: "Permeance is missing" },
  ],
  notFor: "A sheet whose permeance changes with humidity has two figures: look at both tests of its maker.",
  run: (a, tape) => retarderClass(a.permeance, tape),
});

const rules = columnsOf<RetarderRow>(
  ["class", "", (r) => r.cls],
  ["allowed", "", (r) => (r.allowed ? "allowed" : "not allowed")],
  ["why", "", (r) => r.why],
);

const retarderRuleFunction = familyFunction({
  name: "RETARDER_RULE",
  summary:
    "Which class of vapor retarder the code lets stand inside a framed wall, by climate zone and what is outside.",
  params: {
    outsideR: optional(
      number({
        says: "R of continuous insulation outside, h ft2 F/Btu",
        min: 0,
        max: 200,
        usual: { min: 0, max: 60, ask: "is it an R?" },
      }),
      0,
      "no continuous insulation outside",
    ),
    sheathing: optional(
      choice(SHEATHINGS, {
        says: "sheathing under vented cladding",
        also: { osb: "wood panel", plywood: "wood panel" },
      }),
      "wood panel",
      "wood panel sheathing",
    ),
  },
  placed: {
    climateZone,
    codeStud: orElse("code stud"),
    claddingVent: orElse("cladding vent"),
    residentialCode: orElse("residential code"),
  },
  named: countyTerms,
  returns: rules.table("a row for each class: I, II, variable (from 2021), III and none"),
  sources: [RETARDER_CLAUSE["2018"], RETARDER_CLAUSE["2021"]],
  cautions: [preliminary("moisture")],
  example: {
    args: { outsideR: 7.5, climateZone: "5", codeStud: "2x6", residentialCode: "2018" },
    gives: [
      ["I", "allowed", "class I or II is the rule here"],
      ["II", "allowed", "class I or II is the rule here"],
      ["III", "allowed", "R-7.5 outside, R-7.5 wanted"],
      ["none", "not allowed", "class I or II is the rule here"],
    ],
    within: 0,
    source: "IRC 2018 Table R702.7.1 as copied by a public code guide: zone 5, 2x6, R-7.5",
  },
  refuses: [
    { args: { climateZone: "0A" }, says: "IRC 2018 R702.7 and Table R702.7.1 begins with zone 1" },
    { args: { climateZone: "tall" }, says: "zones run from 0 to 8, with A moist, B dry or C marine behind" },
  ],
  notFor: "Roofs, floors and walls without framing have other clauses: ROOF_UNVENTED, or DEW_MONTHS for the physics.",
  run(a, tape) {
    const zone = zoneOf(a, mapOf(a.residentialCode), tape);
    const wall = {
      stud: a.codeStud,
      outsideR: a.outsideR,
      ventedCladding: a.claddingVent === "vented",
      sheathing: a.sheathing,
    };
    const rows = retarderRule(zone, wall, a.residentialCode, tape);
    const says = {
      symbol: "rule",
      rule: `${a.codeStud}, R-${a.outsideR} outside`,
      clause: RETARDER_CLAUSE[a.residentialCode],
    };
    return shown(rules, rows, tape, says);
  },
});

const roofUnvented = familyFunction({
  name: "ROOF_UNVENTED",
  summary: "Least R of air-impermeable insulation in an unvented roof, by climate zone.",
  params: {},
  placed: { climateZone, residentialCode: orElse("residential code") },
  named: {
    ...countyTerms,
    climateStation: ifGiven("climate station", "the code's other rule, 45 F at the deck, is not worked out"),
  },
  returns: quantityOf("h ft2 F/Btu", "least R for condensation control"),
  sources: [UNVENTED_ROOF_CLAUSE, DECK_RULE.clause],
  cautions: [preliminary("moisture")],
  example: {
    args: { climateZone: "6" },
    gives: 25,
    within: 0,
    source: "IRC 2021 Table R806.5, zone 6, read in a state code of that base",
  },
  refuses: [
    { args: { climateZone: "0A" }, says: "IRC Table R806.5 begins with zone 1" },
    { args: { climateZone: "tall" }, says: "zones run from 0 to 8, with A moist, B dry or C marine behind" },
  ],
  notFor:
    "Vented roofs, and unvented ones insulated by fibers alone under the ridge vent clause, follow other lines of the code.",
  run(a, tape) {
    if (a.climateStation !== undefined) leastShareAboveDeck(placeOf(a.climateStation, tape), tape);
    return unventedRoofR(zoneOf(a, mapOf(a.residentialCode), tape), tape);
  },
});

export const enclosureCodeFunctions = [
  uCode,
  rCode,
  climateZoneFunction,
  retarderClassFunction,
  retarderRuleFunction,
  roofUnvented,
] as const;
