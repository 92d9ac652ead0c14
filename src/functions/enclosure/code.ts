import { codeValue } from "../../core/enclosure/energy-code.ts";
import { retarderClass, retarderRule, SHEATHINGS, unventedRoofR } from "../../core/enclosure/retarder.ts";
import { CODE_EDITIONS, CODE_SOURCE } from "../../core/enclosure/tables/energy-code.ts";
import { RETARDER_CLAUSE, RETARDER_EDITIONS } from "../../core/enclosure/tables/retarders.ts";
import { countyZone, parseZone, ZONE_SAYS } from "../../core/enclosure/zone.ts";
import { cellFunction, numberOrText, preliminary, quantityOf, tableOf, textOf } from "../declare/cell-function.ts";
import { optional } from "../declare/param.ts";
import { choice, number, quantity, text } from "../declare/scalar.ts";

export const zone = text({ says: ZONE_SAYS });
const LOCAL = preliminary("energy and moisture code");

const codeParams = (parts: string) => ({
  zone,
  part: text({ says: `part of the enclosure: ${parts}` }),
  edition: optional(
    choice(CODE_EDITIONS, {
      says: "edition of the energy code",
      also: { wa: "Washington 2021", washington: "Washington 2021" },
    }),
    "2021",
    "IECC 2021",
  ),
});

const uCode = cellFunction({
  name: "U_CODE",
  family: "Enclosure",
  summary: "The U-factor that the residential energy code allows at most, by climate zone and part.",
  params: codeParams("wood wall, mass wall, ceiling, floor, basement wall, crawl wall, window, skylight, SHGC"),
  returns: numberOrText("Btu/(h ft2 F)", "greatest U-factor, or NR where there is none"),
  sources: CODE_EDITIONS.map((e) => CODE_SOURCE[e].U) as [string, ...string[]],
  cautions: [LOCAL],
  example: {
    args: { zone: "4C", part: "wood wall", edition: "Washington 2021" },
    gives: 0.056,
    within: 0.0005,
    source: "Washington State Energy Code 2021, WAC 51-11R-40211",
  },
  run: (a, tape) => codeValue("U", parseZone(a.zone), a.part, a.edition, tape),
});

const rCode = cellFunction({
  name: "R_CODE",
  family: "Enclosure",
  summary: "The insulation that the residential energy code asks, by climate zone and part.",
  params: codeParams("wood wall, mass wall, ceiling, floor, basement wall, crawl wall, slab"),
  returns: numberOrText("h ft2 F/Btu", 'least R; "13+5" is cavity and continuous, "20 or 13+5" a choice'),
  sources: ["IECC/IRC 2018 Table R402.1.2 (N1102.1.2)", "IECC 2021 Table R402.1.3"],
  cautions: [LOCAL],
  example: {
    args: { zone: "5", part: "ceiling", edition: "2018" },
    gives: 49,
    within: 0,
    source: "IECC/IRC 2018 Table R402.1.2 = N1102.1.2, as printed in a municipal code",
  },
  run: (a, tape) => codeValue("R", parseZone(a.zone), a.part, a.edition, tape),
});

const climateZone = cellFunction({
  name: "CLIMATE_ZONE",
  family: "Enclosure",
  summary: "Climate zone of a US county, by the map of the IECC 2009 to 2018.",
  params: {
    county: text({ says: 'county, with or without "County"' }),
    state: text({ says: "state, two letters" }),
  },
  returns: textOf("zone with its moisture regime, such as 5A"),
  sources: ["US Department of Energy, climate zones by county, 2010 (CC0 data package)"],
  example: {
    args: { county: "DeKalb", state: "AL" },
    gives: "3A",
    within: 0,
    source: "US Department of Energy, climate zones by county, 2010: DeKalb County, Alabama, zone 3, moist",
  },
  run: (a, tape) => countyZone(a.county, a.state, tape),
});

const retarderClassFunction = cellFunction({
  name: "RETARDER_CLASS",
  family: "Enclosure",
  summary: "Vapor retarder class I, II or III of a permeance, or none.",
  params: { permeance: quantity("perm", { says: "dry-cup permeance (ASTM E96 procedure A)", min: 0, max: 1e6 }) },
  returns: textOf("I, II, III or none"),
  sources: ["IRC 2021 R202: I to 0.1 perm, II to 1.0, III to 10"],
  example: { args: { permeance: 0.06 }, gives: "I", within: 0, source: "IRC 2021 R202: class I is 0.1 perm or less" },
  run: (a, tape) => retarderClass(a.permeance, tape),
});

const stud = optional(
  choice(["2x4", "2x6"], { says: "stud of the wall, which the code's table goes by" }),
  "2x6",
  "2x6 wall",
);

const retarderRuleFunction = cellFunction({
  name: "RETARDER_RULE",
  family: "Enclosure",
  summary:
    "Which class of vapor retarder the code lets stand inside a framed wall, by climate zone and what is outside.",
  params: {
    zone,
    outsideR: optional(
      number({ says: "R of continuous insulation outside, h ft2 F/Btu", min: 0, max: 200 }),
      0,
      "no continuous insulation outside",
    ),
    stud,
    cladding: optional(
      choice(["vented", "not vented"], {
        says: "cladding",
        also: { ventilated: "vented", no: "not vented", yes: "vented" },
      }),
      "not vented",
      "cladding not vented",
    ),
    sheathing: optional(
      choice(SHEATHINGS, {
        says: "sheathing under vented cladding",
        also: { osb: "wood panel", plywood: "wood panel" },
      }),
      "wood panel",
      "wood panel sheathing",
    ),
    edition: optional(choice(RETARDER_EDITIONS, { says: "edition of the IRC" }), "2021", "IRC 2021"),
  },
  returns: tableOf("a row for class I, II, III and none", [
    ["class", ""],
    ["allowed", ""],
    ["why", ""],
  ]),
  sources: [RETARDER_CLAUSE["2018"], RETARDER_CLAUSE["2021"]],
  cautions: [preliminary("moisture")],
  example: {
    args: { zone: "5", outsideR: 7.5, stud: "2x6" },
    gives: [
      ["I", "allowed", "class I or II is the rule here"],
      ["II", "allowed", "class I or II is the rule here"],
      ["III", "allowed", "R-7.5 outside, R-7.5 wanted"],
      ["none", "not allowed", "class I or II is the rule here"],
    ],
    within: 0,
    source: "IRC 2018 Table R702.7.1 as copied by a public code guide: zone 5, 2x6, R-7.5",
  },
  run: (a, tape) =>
    retarderRule(
      parseZone(a.zone),
      { stud: a.stud, outsideR: a.outsideR, ventedCladding: a.cladding === "vented", sheathing: a.sheathing },
      a.edition,
      tape,
    ),
});

const roofUnvented = cellFunction({
  name: "ROOF_UNVENTED",
  family: "Enclosure",
  summary: "Least R of air-impermeable insulation in an unvented roof, by climate zone.",
  params: { zone },
  returns: quantityOf("h ft2 F/Btu", "least R for condensation control"),
  sources: ["IRC Table R806.5"],
  cautions: [preliminary("moisture")],
  example: { args: { zone: "6" }, gives: 25, within: 0, source: "IRC Table R806.5, zone 6, quoted in public notes" },
  run: (a, tape) => unventedRoofR(parseZone(a.zone), tape),
});

export const enclosureCodeFunctions = [
  uCode,
  rCode,
  climateZone,
  retarderClassFunction,
  retarderRuleFunction,
  roofUnvented,
] as const;
