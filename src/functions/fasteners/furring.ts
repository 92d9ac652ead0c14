import { type FurringAnswer, furringFasteners } from "../../core/fasteners/furring.ts";
import { FURRING_FASTENERS, FURRING_TABLES } from "../../core/fasteners/tables/furring.ts";
import { needed, orElse } from "../basis/term.ts";
import { columnsOf } from "../declare/columns.ts";
import { optional } from "../declare/param.ts";
import { length, quantity } from "../declare/scalar.ts";
import { spill } from "../declare/spill.ts";
import { choice } from "../declare/word.ts";
import { familyFunction } from "./family.ts";
import { CAUTION } from "./params.ts";

const answer = columnsOf<FurringAnswer>(
  ["fastener", "", (r) => r.fastener],
  ["penetration", "in", (r) => r.penetrationIn],
  ["spacing", "in", (r) => r.spacingIn ?? "design"],
  ["row of the table", "", (r) => r.row],
);

const furring = familyFunction({
  name: "FURRING_FASTENERS",
  summary:
    "Fasteners of furring, or of cladding itself, through foam on wood framing, read from the code's table and never beyond it.",
  params: {
    insulation: length("in", {
      says: "thickness of the foam",
      min: 0.1,
      max: 4,
      usual: { min: 0.25, max: 4, ask: "is it in inches?" },
      source: "IRC Tables R703.15.1, R703.15.2",
    }),
    cladding: quantity("psf", {
      says: "weight of the cladding",
      min: 0.1,
      max: 25,
      usual: { min: 1, max: 25, ask: "is it in psf?" },
      source: "IRC Tables R703.15.1, R703.15.2",
    }),
    fastener: choice(FURRING_FASTENERS, {
      says: "fastener of the table",
      also: {
        "0.113": "0.113 nail",
        "0.113 in. nail": "0.113 nail",
        "0.12": "0.120 nail",
        "0.120": "0.120 nail",
        "0.120 in. nail": "0.120 nail",
        "0.131": "0.131 nail",
        "0.131 in. nail": "0.131 nail",
        "0.162": "0.162 nail",
        "0.162 in. nail": "0.162 nail",
        "no. 10 screw": "No. 10 wood screw",
        "#10 wood screw": "No. 10 wood screw",
        "#10 screw": "No. 10 wood screw",
        "1/4 lag": "1/4 lag screw",
        "1/4 in. lag": "1/4 lag screw",
        "1/4 in. lag screw": "1/4 lag screw",
      },
    }),
    table: optional(
      choice(FURRING_TABLES, {
        says: "what the fasteners hold",
        means: {
          furred: "wood furring over the foam",
          direct: "the cladding itself, fastened through the foam to the framing",
        },
      }),
      "furred",
      "furring over the foam",
    ),
  },
  placed: { furringSpacing: needed("furring spacing") },
  named: { residentialCode: orElse("residential code") },
  returns: answer.table("the widest spacing along the furring that the table allows, or design"),
  oneRow: true,
  sources: [
    "IRC 2021 Tables R703.15.1 and R703.15.2, all cells read in a state residential code of 2023",
    "IBC 2018 Table 2603.13.2, read in 77 cells, for the residential code 2018",
  ],
  cautions: [CAUTION],
  example: {
    args: { insulation: 1.5, cladding: 18, fastener: "1/4 lag screw", furringSpacing: 16 },
    gives: [
      ["1/4 lag screw", 1.5, 12, "Table R703.15.2: 1/4 lag screw, furring 16 in, 18 psf, every 12 in: up to 1.5 in"],
    ],
    within: 0,
    source: "2023 state residential code, base IRC 2021, Table R703.15.2",
  },
  refuses: [
    { args: { table: "direct" }, says: "it has 0.113 nail, 0.120 nail, 0.131 nail, 0.162 nail" },
    { args: { furringSpacing: 32 }, says: "the method holds from 1 to 24 in (residential code 2021 Table R703.15.2)" },
    { args: { fastener: "0.113 nail" }, says: "it has 0.131 nail, 0.162 nail, No. 10 wood screw, 1/4 lag screw" },
    { args: { residentialCode: "2024" }, says: "its tables of furring over insulation are not held" },
    { args: { furringSpacing: 1.6 }, says: "it must be from 4 to 96 in" },
    { args: { residentialCode: "2018", table: "direct" }, says: "that table of 2018 is not held, the furred one is" },
  ],
  notFor: "Steel or masonry backing, thicker foam and heavier cladding than the table prints need an engineer.",
  run: (a, tape) =>
    spill(
      answer,
      [
        furringFasteners(
          {
            insulationIn: a.insulation,
            claddingPsf: a.cladding,
            fastener: a.fastener,
            table: a.table,
            furringIn: a.furringSpacing,
            edition: a.residentialCode,
          },
          tape,
        ),
      ],
      "answer",
      "fastener, penetration, spacing, row of the table",
      tape,
    ),
});

export const furringFunctions = [furring] as const;
