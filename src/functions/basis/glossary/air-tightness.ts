import type { AirTightness } from "../../../core/enclosure/loss/air-tightness.ts";
import { TEST_PA } from "../../../core/enclosure/loss/air-tightness.ts";
import { BadInput, plain } from "../../../core/kit/refusal.ts";
import { capital } from "../../declare/cell.ts";
import type { Param } from "../../declare/param.ts";
import { quote } from "../../declare/raw.ts";
import { measure } from "../../declare/scalar.ts";

const RESULT = /^(?:([a-z][a-z0-9 ]*?)(?:\s*=\s*|\s+))?([-+]?(?:\d+\.?\d*|\.\d+))\s*(.*)$/;
const CFM_IN_M3_H = 0.3048 ** -3 / 60;
const FT2_IN_M2 = 0.3048 ** -2;
const IN2_IN_CM2 = 2.54 ** -2;

/** ELA: the hole at 4 Pa without contraction; EqLA: the sharp one at 10 Pa. */
const HOLES = { ela: { pa: 4, discharge: 1 }, eqla: { pa: 10, discharge: 0.611 } } as const;

const base = measure("1/h", {
  says: "result of a pressurization test: air changes an hour at 50 Pa, or with its unit 400 cfm50, 680 m3/h, 0.15 cfm50/ft2, 0.25 cfm75/ft2, 0.8 m3/(h m2), 55 in2 ELA, 103 in2 EqLA",
  above: 0,
  max: 50,
  usual: { min: 0.1, max: 20, ask: "is it air changes an hour at 50 Pa?" },
});

/** A test result in the ways that reports print it; a bare number is air changes an hour at 50 Pa. */
export const airTightness: Param<AirTightness, number | string> = {
  ...base,
  read(raw, at, notes) {
    const other = typeof raw === "string" ? readTest(raw, at) : undefined;
    if (other !== undefined) return { value: other, shown: shownAs(other) };
    const bare =
      typeof raw === "string" ? raw.trim().replace(/\s*(?:ach ?50|ach|n50|1\/h|\/h)(?: (?:at|@) 50 ?pa)?$/i, "") : raw;
    const { value, shown } = base.read(bare, at, notes);
    return { value: { kind: "changes", ach50: value }, shown };
  },
};

/** A result that is no air change; undefined for a bare number and air changes. */
function readTest(text: string, at: string): AirTightness | undefined {
  const tidy = text.trim().toLowerCase().replaceAll("³", "3").replaceAll("²", "2").replace(/\s+/g, " ");
  const [, before = "", figure = "", after = ""] = RESULT.exec(tidy) ?? [];
  const unit = `${before} ${after}`.trim();
  if (figure === "" || /^$|^(?:ach ?50|ach|n50|1\/h|\/h)(?: (?:at|@) 50 ?pa)?$/.test(unit)) return undefined;
  const value = Number(figure);
  const test = inUnit(value, unit);
  if (test !== undefined && value > 0) return test;
  throw new BadInput(
    `${capital(at)} is ${quote(text)}`,
    "a test result is air changes at 50 Pa, a flow, a flow over the enclosure's area, or a leakage area, above 0",
    "Write it like 1.2, 400 cfm50, 680 m3/h, 0.15 cfm50/ft2, 0.25 cfm75/ft2, 0.8 m3/(h m2) or 55 in2 ELA",
  );
}

function inUnit(value: number, unit: string): AirTightness | undefined {
  const { rest, pa } = pressureOf(unit);
  if (/^(cfm|ft3\/min)$/.test(rest)) return { kind: "flow", cfm: value, pa };
  if (/^(m3\/h|m3h|cmh)$/.test(rest)) return { kind: "flow", cfm: value * CFM_IN_M3_H, pa };
  if (/^(l\/s)$/.test(rest)) return { kind: "flow", cfm: value * 3.6 * CFM_IN_M3_H, pa };
  if (/^(cfm\/(ft2|sf|sq ?ft))$/.test(rest)) return { kind: "per area", cfmFt2: value, pa };
  if (/^(q ?50 )?(m3\/\(?h[ .·*]?m2\)?|m3\/h\/m2|m\/h)$|^q ?50$/.test(rest))
    return { kind: "per area", cfmFt2: (value * CFM_IN_M3_H) / FT2_IN_M2, pa };
  if (/^l\/\(?s[ .·*]?m2\)?$/.test(rest))
    return { kind: "per area", cfmFt2: (value * 3.6 * CFM_IN_M3_H) / FT2_IN_M2, pa };
  return holeOf(value, unit);
}

/** The pressure in a unit such as cfm50, cfm75/ft2 or "m3/h at 50 Pa"; 50 Pa where it names none. */
function pressureOf(unit: string): { readonly rest: string; readonly pa: number } {
  const told = / ?(?:at|@) ?(\d+(?:\.\d+)?) ?pa$/.exec(unit);
  const inside = /^cfm ?(\d+)(.*)$/.exec(unit);
  if (told !== null) return { rest: unit.slice(0, told.index), pa: Number(told[1]) };
  if (inside !== null) return { rest: `cfm${inside[2]}`, pa: Number(inside[1]) };
  return { rest: unit, pa: TEST_PA };
}

function holeOf(value: number, unit: string): AirTightness | undefined {
  const [, first, second, third] = /^(?:(ela|eqla) )?(in2|sq ?in|cm2)(?: (ela|eqla))?$/.exec(unit) ?? [];
  const name = (first ?? third) as keyof typeof HOLES | undefined;
  if (second === undefined || name === undefined) return undefined;
  return { kind: "hole", in2: second === "cm2" ? value * IN2_IN_CM2 : value, ...HOLES[name] };
}

function shownAs(test: AirTightness): string {
  const told = (value: number) => plain(Number(value.toPrecision(4)));
  if (test.kind === "flow") return `${told(test.cfm)} cfm at ${plain(test.pa)} Pa`;
  if (test.kind === "per area") return `${told(test.cfmFt2)} cfm/ft2 at ${plain(test.pa)} Pa`;
  return test.kind === "hole" ? `${told(test.in2)} in2 at ${plain(test.pa)} Pa` : `${told(test.ach50)} 1/h`;
}
