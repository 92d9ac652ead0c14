import type { Tape } from "../../kit/tape.ts";
import type { Film } from "./films.ts";
import { type Layer, type LayerInput, resolveLayer } from "./layer.ts";

const VENTILATED_CLAUSE = "ISO 6946:2017 6.9";
/** Openings in mm2 per m of wall, or per m2 of a horizontal layer: up to the first the air layer counts as still, from the second on as outdoor air. */
const STILL_UP_TO_MM2_M = 500;
const OUTDOOR_FROM_MM2_M = 1500;

/** Layers between two air films, inside to outside. */
export interface Assembly {
  readonly layers: readonly Layer[];
  readonly inside: Film;
  readonly outside: Film;
  /** layers outboard of a well ventilated cavity, and the cavity itself: they count neither for heat nor for vapor */
  readonly dropped: readonly Layer[];
  /** the same without the cavity and what lies outside it, and its weight, where the cavity is slightly ventilated */
  readonly ventilated: { readonly share: number; readonly layers: readonly Layer[] } | undefined;
}

/**
 * Puts layers and films together and applies the ventilated-cavity rule.
 * @param inputs inside to outside
 * @throws BadInput naming the row that cannot be used
 * Source: ISO 6946:2017 6.9.2 to 6.9.4: openings to 500 mm2 per m still air, from 1500 well ventilated, between them interpolated.
 */
export function assemble(inputs: readonly LayerInput[], inside: Film, outside: Film, tape?: Tape): Assembly {
  const layers = inputs.map((input) => resolveLayer(input, inside.flow, tape));
  return ventilate(layers, inside, outside, tape);
}

function ventilate(layers: readonly Layer[], inside: Film, outside: Film, tape?: Tape): Assembly {
  const at = layers.findIndex((l) => l.role.kind === "ventilated cavity");
  const role = layers[at]?.role;
  const whole: Assembly = { layers, inside, outside, dropped: [], ventilated: undefined };
  if (role?.kind !== "ventilated cavity") return whole;
  const opening = role.openingMm2M;
  if (opening !== undefined && opening <= STILL_UP_TO_MM2_M) {
    tape?.assume(
      `openings of ${Math.round(opening)} mm2 per m of wall (or m2 of roof): the cavity counts as still air (${VENTILATED_CLAUSE}.2)`,
    );
    return whole;
  }
  const inner = layers.slice(0, at);
  if (opening !== undefined && opening < OUTDOOR_FROM_MM2_M) {
    const share = (opening - STILL_UP_TO_MM2_M) / (OUTDOOR_FROM_MM2_M - STILL_UP_TO_MM2_M);
    tape?.assume(
      `openings of ${Math.round(opening)} mm2 per m of wall (or m2 of roof): slightly ventilated cavity (${VENTILATED_CLAUSE}.3)`,
    );
    return { ...whole, ventilated: { share, layers: inner } };
  }
  tape?.assume(
    `row ${layers[at]?.row} is a well ventilated cavity: it and all layers outside it drop out, and the outside film is that of still air (${VENTILATED_CLAUSE}.4)`,
  );
  const rIp = inside.stillAirRIp;
  const still: Film = { ...outside, rIp, says: "still air in the cavity", clause: `${VENTILATED_CLAUSE}.4` };
  return { layers: inner, inside, outside: still, dropped: layers.slice(at), ventilated: undefined };
}
