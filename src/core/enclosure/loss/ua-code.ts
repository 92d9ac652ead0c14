import { BadInput, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { type Zone, zoneName } from "../climate/zone.ts";
import { CODE_SOURCE, type CodeEdition } from "../tables/energy-code.ts";
import { codeValue } from "./energy-code.ts";
import type { AreaPart } from "./heat-loss.ts";

/** A part with the part of the code's table that it is held against. */
export interface CodedPart extends AreaPart {
  readonly codePart: string;
}

/** A part, or the total, against the code. U in Btu/(h ft2 F), UA in Btu/(h F). */
export interface UaRow {
  readonly name: string;
  readonly areaFt2: number;
  readonly u: number;
  readonly ua: number;
  readonly codeU: number;
  readonly codeUa: number;
  readonly verdict: string;
}

/**
 * Whole-house trade-off: the sum of U A of the parts against the sum with the code's U. The last row is the total.
 * @throws BadInput for a part that the code's table gives no number for; as codeValue
 * Source: IECC R402.1.5 (total UA alternative), U of Table R402.1.2.
 */
export function uaAgainstCode(
  parts: readonly CodedPart[],
  zone: Zone,
  edition: CodeEdition,
  tape?: Tape,
): readonly UaRow[] {
  const rows = parts.map((p): UaRow => {
    const codeU = codeValue("U", zone, p.codePart, edition, tape);
    if (typeof codeU !== "number") {
      throw new BadInput(
        `The code's U of ${p.codePart} is "${codeU}" in zone ${zoneName(zone)}`,
        `${CODE_SOURCE[edition].U} sets none there`,
        `Leave ${p.name} out of the trade-off`,
      );
    }
    const ua = p.areaFt2 * p.u;
    const codeUa = p.areaFt2 * codeU;
    const verdict = p.u <= codeU ? "within the code's U" : "above the code's U";
    return { name: p.name, areaFt2: p.areaFt2, u: p.u, ua, codeU, codeUa, verdict };
  });
  writeMeans(parts, tape);
  return [...rows, totalRow(rows, tape)];
}

/** Where several parts share one of the code's, their U weighted by area, which the code lets stand for each (R402.3.1 for fenestration). */
function writeMeans(parts: readonly CodedPart[], tape: Tape | undefined): void {
  for (const codePart of new Set(parts.map((p) => p.codePart))) {
    const own = parts.filter((p) => p.codePart === codePart);
    if (own.length < 2) continue;
    const area = own.reduce((s, p) => s + p.areaFt2, 0);
    const mean = own.reduce((s, p) => s + p.areaFt2 * p.u, 0) / area;
    tape?.step(`U ${codePart}`, `sum(U A) / ${plain(area)} ft2`, mean, "Btu/(h ft2 F)", "weighted by area");
  }
}

function totalRow(rows: readonly UaRow[], tape: Tape | undefined): UaRow {
  const sum = (of: (r: UaRow) => number) => rows.reduce((s, r) => s + of(r), 0);
  const [areaFt2, ua, codeUa] = [sum((r) => r.areaFt2), sum((r) => r.ua), sum((r) => r.codeUa)];
  const clause = "IECC R402.1.5, total UA alternative";
  tape?.step("UA", "sum(U A)", ua, "Btu/(h F)", clause);
  tape?.step("UA code", "sum(U_code A)", codeUa, "Btu/(h F)", clause);
  const off = plain(Number((100 * Math.abs(1 - ua / codeUa)).toPrecision(2)));
  const verdict = ua <= codeUa ? `met, ${off} % under the code` : `not met, ${off} % over the code`;
  tape?.caution(
    "The trade-off of the code counts insulation and fenestration only where the edition says so, and sets limits on windows besides: the building department decides.",
  );
  return { name: "total", areaFt2, u: ua / areaFt2, ua, codeU: codeUa / areaFt2, codeUa, verdict };
}
