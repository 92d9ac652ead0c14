import { asce } from "../kit/edition.ts";
import { plain } from "../kit/refusal.ts";
import type { Tape } from "../kit/tape.ts";
import type { RoofShape } from "../wind/building.ts";
import type { RoofSnowPicture } from "./pictures.ts";
import { balancedSnow, type SnowSite } from "./snow-roof.ts";
import { type UnbalancedPart, unbalancedSnow } from "./snow-unbalanced.ts";
import type { RoofSurface } from "./tables/snow.ts";

export interface RoofSnowInput extends SnowSite {
  readonly slopeDeg: number;
  readonly roof: RoofShape;
  readonly surface: RoofSurface;
  /** level, ft; undefined leaves out rain on snow and unbalanced loads */
  readonly eaveToRidgeFt: number | undefined;
  /** simply supported prismatic members span from eave to ridge */
  readonly simpleRafters: boolean;
  /** winter wind parameter W2 of 7-22 */
  readonly winterWind: number | undefined;
}

/** One snow load of a roof. */
export interface RoofSnow {
  readonly load: string;
  readonly psf: number;
  readonly over: string;
}

const WHOLE = "whole roof";

/**
 * Snow loads of a roof: the balanced design load, what it is made of, and the unbalanced loads of a gable or hip. A flat or monoslope roof has none.
 * To 7-16 at the level of their ground snow map (factor 1.6 in strength combinations), in 7-22 at strength level (factor 1.0).
 * Source: ASCE/SEI 7-10, 7-16, 7-22 sections 7.3, 7.4, 7.6, 7.10.
 */
export function snowOnRoof(input: RoofSnowInput, tape?: Tape): readonly RoofSnow[] {
  const { slopeDeg, surface, eaveToRidgeFt, edition } = input;
  const balanced = balancedSnow(input, slopeDeg, surface, eaveToRidgeFt, tape);
  const parts = unbalancedParts(input, balanced.slopedPsf, tape);
  const rows: RoofSnow[] = [
    { load: "balanced, design", psf: balanced.designPsf, over: WHOLE },
    { load: "flat roof pf", psf: balanced.flatPsf, over: WHOLE },
    { load: "sloped ps", psf: balanced.slopedPsf, over: WHOLE },
    { load: "minimum pm", psf: balanced.leastPsf, over: WHOLE },
    { load: "rain on snow", psf: balanced.rainPsf, over: WHOLE },
    ...parts.map(({ side, psf, widthFt }) => ({ load: `unbalanced, ${side}`, psf, over: overText(widthFt) })),
  ];
  tape?.assume(levelSentence(edition === "7-22"));
  tape?.show(picture(input, balanced.designPsf, parts));
  const cells = rows.map((r) => [r.load, r.psf, r.over]);
  tape?.step("snow", "load, psf, over", cells, "psf", asce(edition, "chapter 7"));
  return rows;
}

function levelSentence(strength: boolean): string {
  return strength
    ? "Snow is at strength level: factor 1.0 in strength combinations, 0.7 in allowable ones."
    : "Snow is at the level of the ground snow map: factor 1.6 in strength combinations, 1.0 in allowable ones.";
}

function unbalancedParts(input: RoofSnowInput, slopedPsf: number, tape: Tape | undefined): readonly UnbalancedPart[] {
  const { roof, slopeDeg, eaveToRidgeFt, simpleRafters, edition } = input;
  if (roof === "flat" || roof === "monoslope") {
    tape?.step("unbalanced", `${roof} roof: none`, 0, "psf", asce(edition, "7.6"));
    return [];
  }
  if (eaveToRidgeFt === undefined) {
    tape?.caution("Unbalanced loads are not looked at: give the width from eave to ridge, or the building's width.");
    return [];
  }
  return unbalancedSnow(input, slopedPsf, slopeDeg, eaveToRidgeFt, simpleRafters, tape);
}

function overText(widthFt: number | undefined): string {
  return widthFt === undefined ? "whole slope" : `${plain(Number(widthFt.toFixed(2)))} ft from the ridge`;
}

function picture(input: RoofSnowInput, balancedPsf: number, parts: readonly UnbalancedPart[]): RoofSnowPicture {
  const { slopeDeg, roof, eaveToRidgeFt } = input;
  const psf = (side: UnbalancedPart["side"]) => parts.find((p) => p.side === side)?.psf ?? 0;
  const surcharge = parts.find((p) => p.side === "leeward surcharge");
  const unbalanced =
    parts.length === 0
      ? undefined
      : {
          windwardPsf: psf("windward"),
          leewardPsf: psf("leeward"),
          surchargePsf: surcharge?.psf ?? 0,
          surchargeFt: surcharge?.widthFt ?? 0,
        };
  const beside =
    unbalanced === undefined
      ? "no unbalanced load"
      : `unbalanced ${plain(Math.round(unbalanced.windwardPsf))} psf windward and ${plain(Math.round(unbalanced.leewardPsf + unbalanced.surchargePsf))} psf at the ridge leeward`;
  return {
    kind: "roof-snow",
    alt: `Snow on a ${roof} roof of ${plain(Number(slopeDeg.toFixed(1)))} degrees: balanced ${balancedPsf.toFixed(1)} psf, ${beside}.`,
    slopeDeg,
    roof,
    eaveToRidgeFt,
    balancedPsf,
    unbalanced,
  };
}
