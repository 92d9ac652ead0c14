import { type Html, html } from "./html.ts";

/** What somebody might look for, and why it is not here. */
const NOT_HERE: readonly (readonly [what: string, why: string])[] = [
  [
    "Roof coefficients GCp of ASCE/SEI 7-16 for gable and hip roofs",
    "no public print of the figures was found; read them from the standard and give them to WIND_CLADDING as a table of coefficients",
  ],
  [
    "Roof coefficients GCp of ASCE/SEI 7-22 for monoslope roofs, and of overhangs in 7-16",
    "not found in print either; they are taken as a table of coefficients",
  ],
  [
    "Thermal factor Ct and winter wind parameter W2 of ASCE/SEI 7-22",
    "its table of Ct and its map are not held, so both are asked for",
  ],
  ["Open buildings and free roofs under wind", "their net coefficients CN are not held; the functions refuse them"],
  [
    "Sliding snow from a higher roof",
    "no print of a worked example or of the rule's own text was found to check it against; add it by section 7.9 of ASCE/SEI 7",
  ],
  [
    "Seismic rules beside the base shear: category A, redundancy, diaphragms, parts, and R of thick panels as shear walls",
    "no print was found; LOAD_SEISMIC gives the equivalent lateral force and asks for R where the walls are not light-frame",
  ],
  [
    "Insulation and window tables of the energy code of 2024",
    "public pages contradict each other (R-49 or R-60 for one ceiling); only its adoption by New York is held",
  ],
  [
    "Vented and unheated crawl spaces under an insulated floor",
    "no print of their default U-factors was found; heated and open crawl spaces are held",
  ],
  [
    "Degree-days and moisture of states without a weather station of hourly data",
    "the normals hold mean temperatures alone: CLIMATE_STATIONS gives them, the least degree-days they allow, and the nearest station",
  ],
  ["Special wind region, snow and seismic maps", "maps are not held: give the mapped value of the site"],
  ["Perforated shear walls by SDPWS 2021", "its equation is not held; 2008 and 2015 are"],
  [
    "Notched, tapered, treated and hot wood members",
    "the adjustment factors for them are not held; the functions refuse them",
  ],
  [
    "Cross-laminated panels from named makers, proprietary screws and anchors",
    "no product data is built in: give the figures of the evaluation report in a row",
  ],
  [
    "Two-dimensional heat and moisture simulation",
    "the dew point functions go by steady states and monthly means, and say so",
  ],
  [
    "Design of glazing, roof coverings, foundations and retaining walls",
    "outside the shell that these functions are made for",
  ],
  [
    "Crane charts, rigging hardware and trucks of named makers",
    "give the chart or the limit as a table: nothing is read between its rows",
  ],
  ["Prices and wages", "none is built in: an office's own stand in cells"],
];

export function notHereBody(): Html {
  return html`<h1>What is not here</h1>
<p>A function that does not know refuses with a sentence. These are the things that are left out on purpose.</p>
<dl>
${NOT_HERE.map(([what, why]) => html`<dt>${what}</dt>\n<dd>${why}.</dd>\n`)}</dl>`;
}
