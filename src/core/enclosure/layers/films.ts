import { within } from "../../kit/refusal.ts";
import { R_IP_IN_RSI } from "../air/si.ts";
import {
  ASHRAE_FILM_CLAUSE,
  ASHRAE_OUTDOOR_R_IP,
  ASHRAE_STILL_AIR_R_IP,
  type FilmEmittance,
  GREATEST_FILM_R_IP,
  HEAT_FLOWS,
  type HeatFlow,
  ISO_FILM_CLAUSE,
  ISO_FLOW,
  ISO_FLOWS,
  ISO_MOLD_FILM_CLAUSE,
  ISO_RSE_M2KW,
  ISO_RSI_M2KW,
  ISO_RSI_MOLD_M2KW,
} from "../tables/films.ts";

/** The air film at a surface. */
export interface Film {
  /** h ft2 F/Btu */
  readonly rIp: number;
  readonly flow: HeatFlow;
  readonly says: string;
  readonly clause: string;
  /** film of still air for the same direction: what stands outside a ventilated cavity */
  readonly stillAirRIp: number;
}

/** Half the last digit that the tables print. */
const PRINTED_R_IP = 0.005;

/** The direction of heat flow whose film of still air at an ordinary surface is the R given, as the tables print it. */
function flowOf(rIp: number): HeatFlow | undefined {
  const printed = (r: number) => Math.abs(rIp - r) < PRINTED_R_IP;
  const ashrae = HEAT_FLOWS.find((flow) => printed(ASHRAE_STILL_AIR_R_IP[flow][0.9]));
  return ashrae ?? ISO_FLOWS.find((flow) => printed(ISO_RSI_M2KW[flow] * R_IP_IN_RSI));
}

/**
 * A film of a given R. Its direction is that of the film at the other side; inside, that of the table's film of still air with this R (0.61 is a
 * roof's, 0.92 a floor's), and that of a wall where the R is none of them.
 * @param rIp 0 to the R of the largest film in the table
 * @throws OutOfRange outside those limits
 */
export function givenFilm(side: string, rIp: number, other?: Film): Film {
  within(`The R of the ${side} film`, rIp, 0, GREATEST_FILM_R_IP, "h ft2 F/Btu", ASHRAE_FILM_CLAUSE);
  const given = { rIp, says: "as given", clause: "argument" };
  if (other !== undefined) return { ...given, flow: other.flow, stillAirRIp: other.stillAirRIp };
  const flow = flowOf(rIp);
  if (flow !== undefined) return { ...given, flow, says: `as given: still air, heat flow ${flow}`, stillAirRIp: rIp };
  return { ...given, flow: "horizontal", stillAirRIp: ASHRAE_STILL_AIR_R_IP.horizontal[0.9] };
}

/** Still air at an inside surface. Source: ASHRAE Handbook Fundamentals 2021 ch. 26 Table 10. */
export function stillAirFilm(flow: HeatFlow, emittance: FilmEmittance): Film {
  const rIp = ASHRAE_STILL_AIR_R_IP[flow][emittance];
  const says = `still air, heat flow ${flow}, emittance ${emittance}`;
  return { rIp, flow, says, clause: ASHRAE_FILM_CLAUSE, stillAirRIp: ASHRAE_STILL_AIR_R_IP[flow][0.9] };
}

/** The inside film of ISO 6946:2017 Table 7. */
export function isoFilm(flow: HeatFlow): Film {
  const rIp = ISO_RSI_M2KW[ISO_FLOW[flow]] * R_IP_IN_RSI;
  return { rIp, flow, says: `ISO, heat flow ${flow}`, clause: ISO_FILM_CLAUSE, stillAirRIp: rIp };
}

/** The reduced inside film of mold and condensation checks. Source: ISO 13788:2012. */
export function moldFilm(): Film {
  const rIp = ISO_RSI_MOLD_M2KW * R_IP_IN_RSI;
  const stillAirRIp = ISO_RSI_M2KW.horizontal * R_IP_IN_RSI;
  return { rIp, flow: "horizontal", says: "ISO mold check", clause: ISO_MOLD_FILM_CLAUSE, stillAirRIp };
}

export type OutdoorFilm = "winter" | "summer" | "iso" | "still air";

/** The film outdoors. `inside` gives the direction of heat flow and the film of still air. */
export function outdoorFilm(kind: OutdoorFilm, inside: Film): Film {
  const { flow, stillAirRIp } = inside;
  const film = (rIp: number, says: string, clause: string): Film => ({ rIp, flow, says, clause, stillAirRIp });
  if (kind === "winter") return film(ASHRAE_OUTDOOR_R_IP.winter, "winter, 15 mph wind", ASHRAE_FILM_CLAUSE);
  if (kind === "summer") return film(ASHRAE_OUTDOOR_R_IP.summer, "summer, 7.5 mph wind", ASHRAE_FILM_CLAUSE);
  if (kind === "iso") return film(ISO_RSE_M2KW * R_IP_IN_RSI, "ISO outside", ISO_FILM_CLAUSE);
  return film(stillAirRIp, "still air as inside", inside.clause);
}
