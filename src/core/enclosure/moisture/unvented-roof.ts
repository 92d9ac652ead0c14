import { OutOfRange, plain } from "../../kit/refusal.ts";
import type { Tape } from "../../kit/tape.ts";
import { cToF } from "../air/si.ts";
import type { Place } from "../climate/stations.ts";
import { type Zone, zoneColumn, zoneName } from "../climate/zone.ts";
import { DECK_RULE, UNVENTED_ROOF_CLAUSE, UNVENTED_ROOF_R } from "../tables/retarders.ts";

/**
 * Least R of air-impermeable insulation for condensation control in an unvented attic or roof.
 * @returns h ft2 F/Btu
 * @throws OutOfRange for zone 0
 * Source: IRC Table R806.5.
 */
export function unventedRoofR(zone: Zone, tape?: Tape): number {
  const rIp = UNVENTED_ROOF_R[zoneColumn(zone, tape)];
  if (rIp === undefined) {
    throw new OutOfRange(
      `Zone ${zoneName(zone)} is not in the table`,
      `${UNVENTED_ROOF_CLAUSE} begins with zone 1`,
      "Ask the building department",
    );
  }
  if ((zone.number === 2 || zone.number === 3) && zone.regime === "B") {
    tape?.assume("the exception for tile roofs in zones 2B and 3B, R 0, is not used");
  }
  tape?.assume("no class I retarder on the ceiling side (R806.5 item 2)");
  if (zone.number >= 5) {
    tape?.assume("the air-impermeable insulation is a class II retarder itself, or coated with one (R806.5 item 4)");
  }
  tape?.step("R", `zone ${zoneName(zone)}`, rIp, "h ft2 F/Btu", UNVENTED_ROOF_CLAUSE);
  return rIp;
}

/**
 * Least share of the roof's R that must lie above the deck to keep its underside above 45 F: the code's other rule.
 * @returns share, 0 to 1
 * Source: IRC R806.5 5.1.4: 68 F inside, the mean of the three coldest months outside.
 */
export function leastShareAboveDeck(station: Place, tape?: Tape): number {
  const coldest = [...station.tempC].sort((a, b) => a - b).slice(0, DECK_RULE.months);
  const outdoorF = cToF(coldest.reduce((sum, t) => sum + t, 0) / coldest.length);
  const share = Math.max(0, (DECK_RULE.deckF - outdoorF) / (DECK_RULE.indoorF - outdoorF));
  tape?.step("T_o", `${station.name}: mean of the ${DECK_RULE.months} coldest months`, outdoorF, "F", DECK_RULE.clause);
  const rule = `other rule: (${DECK_RULE.deckF} - ${plain(outdoorF)}) / (${DECK_RULE.indoorF} - ${plain(outdoorF)}) of the roof's R lies above the deck`;
  tape?.step("R_out/R_T", rule, share, "", DECK_RULE.clause);
  return share;
}
