import { asce } from "../kit/edition.ts";
import { cautionRecalled } from "../kit/known.ts";
import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import { type DriftSite, driftHeight, snowDensity } from "./snow-drift.ts";
import { snowImportance } from "./snow-roof.ts";
import { SIMPLE_RAFTER_FT, UNBALANCED_FROM_DEGREES, UNBALANCED_TO_DEGREES } from "./tables/snow.ts";

/** One load of the unbalanced case of a gable or hip roof. */
export interface UnbalancedPart {
  readonly side: "windward" | "leeward" | "leeward surcharge";
  readonly psf: number;
  /** from the ridge, ft; the whole slope where undefined */
  readonly widthFt: number | undefined;
}

/**
 * Unbalanced snow on a gable or hip roof; empty outside 1/2 on 12 to 7 on 12.
 * Up to 20 ft from eave to ridge with simply supported prismatic members from eave to ridge (no trusses): Is pg on the leeward side (7-22: pg). Else 0.3 ps windward; leeward ps and a surcharge
 * gamma hd / sqrt(S) over 8 hd sqrt(S) / 3 from the ridge, S the run for a rise of one. From memory.
 * @param slopedPsf balanced load ps, psf
 * @param eaveToRidgeFt level, ft
 * Source: ASCE/SEI 7-10, 7-16, 7-22 section 7.6.1.
 */
export function unbalancedSnow(
  site: DriftSite,
  slopedPsf: number,
  slopeDeg: number,
  eaveToRidgeFt: number,
  simpleRafters: boolean,
  tape?: Tape,
): readonly UnbalancedPart[] {
  const { groundPsf, category, edition } = site;
  const clause = asce(edition, "7.6.1 (from memory)");
  if (slopeDeg < UNBALANCED_FROM_DEGREES || slopeDeg > UNBALANCED_TO_DEGREES) {
    tape?.step("unbalanced", `${plain(slopeDeg)} degrees lies outside 1/2 on 12 to 7 on 12: none`, 0, "psf", clause);
    return [];
  }
  cautionRecalled(tape, "The unbalanced snow loads", "section 7.6.1 of the edition");
  if (eaveToRidgeFt <= SIMPLE_RAFTER_FT && simpleRafters) {
    const psf = snowImportance(category, edition) * groundPsf;
    tape?.step(
      "unbalanced",
      `W up to ${SIMPLE_RAFTER_FT} ft, simply supported prismatic members from eave to ridge: ${edition === "7-22" ? "" : "Is "}pg leeward, none windward`,
      psf,
      "psf",
      clause,
    );
    return [
      { side: "windward", psf: 0, widthFt: undefined },
      { side: "leeward", psf, widthFt: undefined },
    ];
  }
  const gamma = snowDensity(groundPsf, edition, tape);
  const hd = driftHeight(site, eaveToRidgeFt, tape);
  const rootS = Math.sqrt(1 / Math.tan((slopeDeg * Math.PI) / 180));
  const surchargePsf = (hd * gamma) / rootS;
  const widthFt = Math.min((8 * hd * rootS) / 3, eaveToRidgeFt);
  tape?.step("sqrt(S)", "S = run for a rise of one", rootS, "", clause);
  tape?.step("windward", "0.3 ps", 0.3 * slopedPsf, "psf", clause);
  tape?.step("surcharge", "gamma hd / sqrt(S)", surchargePsf, "psf", clause);
  tape?.step("width", "8 hd sqrt(S) / 3 from the ridge, not beyond the eave", widthFt, "ft", clause);
  return [
    { side: "windward", psf: 0.3 * slopedPsf, widthFt: undefined },
    { side: "leeward", psf: slopedPsf, widthFt: undefined },
    { side: "leeward surcharge", psf: surchargePsf, widthFt },
  ];
}
