/**
 * Generic building materials: conductivity or R, and resistance to vapor. An office's own row with its own figures wins over these.
 * Sources by letter below. Where a figure is a single published point or an assumption, `caution` says so.
 */

/** How strongly a material resists vapor. `mu` compares with still air of the same thickness, `sd` is the equivalent air layer in m. */
export type VaporData =
  /** pairs of relative humidity (share) and value; between points the logarithm is interpolated, beyond them the end value holds */
  | { readonly kind: "mu" | "sd"; readonly points: readonly (readonly [number, number])[] }
  /** mu = muAt100 x RH^-exponent, held constant outside `from` to `to` */
  | {
      readonly kind: "mu power";
      readonly muAt100: number;
      readonly exponent: number;
      readonly from: number;
      readonly to: number;
    };

export type HeatData =
  | { readonly kind: "k"; readonly kWmK: number }
  /** wood across the grain by the Wood Handbook equation */
  | { readonly kind: "wood"; readonly specificGravity: number; readonly moisturePct: number }
  /** one resistance whatever the thickness: membranes, lapped siding */
  | { readonly kind: "R"; readonly rM2KW: number }
  /** an unventilated air layer, by thickness, direction of heat flow and emittance of its two faces */
  | { readonly kind: "air"; readonly emittances: readonly [number, number] };

export interface Material {
  readonly name: string;
  readonly also: readonly string[];
  readonly heat: HeatData;
  readonly heatSource: string;
  readonly vapor?: VaporData;
  readonly vaporSource?: string;
  /** what to know before using the R, and the vapor figure */
  readonly heatCaution?: string;
  readonly vaporCaution?: string;
}

const F2005 = "ASHRAE Handbook Fundamentals 2005 ch. 25/30, as carried in the EnergyPlus open data set";
const F2021 = "ASHRAE Handbook Fundamentals 2021 ch. 26 Table 1";
const WOOD = "USDA FPL Wood Handbook GTR-190 eq. 4-15";
const MOIST = "EnergyPlus open data set, moisture materials";
const DIN = "DIN 4108-4 values as printed in building-physics tables";
const POINT5 = "single figure from ASHRAE Handbook Fundamentals 2021 ch. 26 Table 5";
const POINT6 = "single figure at 50 % RH from ASHRAE Handbook Fundamentals 2021 ch. 26 Table 6";
/** ISO 13788 and DIN 4108-3 take still air as 2e-10 kg/(m s Pa), so a permeance of W ng/(s m2 Pa) is an sd of 200/W m. */
const SD_M_NG = 200;

const mu = (value: number): VaporData => ({ kind: "mu", points: [[0.5, value]] });
const sd = (value: number): VaporData => ({ kind: "sd", points: [[0.5, value]] });
/** Dry cup and wet cup permeance in ng/(s m2 Pa), read at the mean humidity of each test: 25 % and 75 %. */
const cups = (dry: number, wet: number): VaporData => ({
  kind: "sd",
  points: [
    [0.25, SD_M_NG / dry],
    [0.75, SD_M_NG / wet],
  ],
});
/** Plywood: vapor resistance falls with humidity. */
const PLYWOOD_MU: VaporData = {
  kind: "mu",
  points: [
    [0, 700],
    [0.5, 200],
    [1, 20],
  ],
};
const k = (kWmK: number): HeatData => ({ kind: "k", kWmK });
const r = (rM2KW: number): HeatData => ({ kind: "R", rM2KW });

const WOOD_MU = { vapor: mu(130), vaporSource: `${MOIST} (spruce)` };

export const MATERIALS: readonly Material[] = [
  {
    name: "veneer panel",
    also: ["panel", "thick veneer panel", "laminated veneer panel", "laminated veneer lumber", "lvl", "lvl panel"],
    heat: { kind: "wood", specificGravity: 0.5, moisturePct: 12 },
    heatSource: WOOD,
    vapor: PLYWOOD_MU,
    vaporSource: `${MOIST} (plywood)`,
    heatCaution:
      "Veneer panel: conductivity by the wood equation at specific gravity 0.50 and 12 % moisture, good to about 20 %. Give the maker's R where known.",
    vaporCaution:
      "Veneer panel: no published vapor figure was found for thick laminated veneer, plywood stands in for it. Give the maker's perm where known.",
  },
  {
    name: "gypsum board",
    also: ["drywall", "gypsum", "gypsum sheathing", "plasterboard", "gypsum wallboard"],
    heat: k(0.16),
    heatSource: F2021,
    vapor: mu(6),
    vaporSource: MOIST,
  },
  {
    name: "mineral wool board",
    also: ["mineral wool", "rock wool board", "stone wool board", "rock wool", "stone wool"],
    heat: k(0.036),
    heatSource: F2021,
    vapor: mu(1),
    vaporSource: DIN,
  },
  {
    name: "mineral wool batt",
    also: ["rock wool batt", "stone wool batt", "slag wool batt"],
    heat: k(0.035),
    heatSource: F2021,
    vapor: mu(1),
    vaporSource: DIN,
  },
  {
    name: "glass fiber batt",
    also: ["fiberglass batt", "glass fibre batt", "fiberglass", "glass fiber", "batt"],
    heat: k(0.039),
    heatSource: F2021,
    vapor: mu(1.2543),
    vaporSource: MOIST,
  },
  {
    name: "glass fiber board",
    also: ["fiberglass board", "glass fibre board"],
    heat: k(0.036),
    heatSource: F2005,
    vapor: mu(1.2543),
    vaporSource: MOIST,
  },
  {
    name: "dense-packed cellulose",
    also: ["cellulose", "dense pack cellulose"],
    heat: k(0.04),
    heatSource: F2021,
    vapor: mu(1.5),
    vaporSource: MOIST,
  },
  {
    name: "wood fiberboard",
    also: ["wood fibreboard", "wood fiber board", "fiberboard", "fiberboard sheathing", "fibreboard"],
    heat: k(0.055),
    heatSource: F2005,
    vapor: mu(13.35),
    vaporSource: POINT6,
  },
  {
    name: "eps board",
    also: ["eps", "expanded polystyrene"],
    heat: k(0.037),
    heatSource: F2021,
    vapor: mu(30),
    vaporSource: DIN,
  },
  {
    name: "eps board, dense",
    also: ["dense eps", "eps dense", "eps high density"],
    heat: k(0.033),
    heatSource: F2021,
    vapor: mu(30),
    vaporSource: DIN,
  },
  {
    name: "xps board",
    also: ["xps", "extruded polystyrene"],
    heat: k(0.029),
    heatSource: F2021,
    vapor: mu(164),
    vaporSource: POINT6,
    heatCaution:
      "XPS: aged conductivity with the older blowing agents; newer ones reach 0.036 W/(m K). Give the maker's R where known.",
  },
  {
    name: "polyiso board",
    also: ["polyiso", "polyisocyanurate", "polyisocyanurate board"],
    heat: k(0.025),
    heatSource: F2021,
    vapor: mu(58.07),
    vaporSource: POINT6,
    heatCaution: "Polyiso: aged, near 75 F; its R falls in cold weather. Give the maker's R where known.",
    vaporCaution: "Polyiso: without facers; foil facers stop vapor. Give the maker's perm where known.",
  },
  {
    name: "closed-cell spray foam",
    also: ["closed cell spray foam", "ccspf"],
    heat: k(0.029),
    heatSource: F2021,
    vapor: mu(72.73),
    vaporSource: POINT6,
  },
  {
    name: "open-cell spray foam",
    also: ["open cell spray foam", "ocspf"],
    heat: k(0.042),
    heatSource: F2021,
    vapor: mu(2.286),
    vaporSource: POINT6,
  },
  {
    name: "plywood",
    also: ["plywood sheathing", "douglas-fir plywood"],
    heat: k(0.12),
    heatSource: F2005,
    vapor: PLYWOOD_MU,
    vaporSource: MOIST,
  },
  {
    name: "osb",
    also: ["oriented strand board", "osb sheathing"],
    heat: k(0.0127 / 0.12),
    heatSource: `${F2021}: R 0.12 m2 K/W at 12.7 mm`,
    // A power law fits the five points of one 12.3 mm board within 2 %; the spread between boards is far wider.
    vapor: { kind: "mu power", muAt100: 60.6, exponent: 1.87, from: 0.1, to: 0.9 },
    vaporSource: "power law fitted to the humidity series of one board in ASHRAE Handbook Fundamentals 2021 ch. 26",
    vaporCaution: "OSB: boards of the same thickness differ by a factor of two and more in vapor permeance.",
  },
  { name: "particleboard", also: ["chipboard"], heat: k(0.135), heatSource: F2005, vapor: mu(50), vaporSource: DIN },
  {
    name: "hardboard siding",
    also: ["hardboard"],
    heat: k(0.105),
    heatSource: F2005,
    vapor: mu(43.07),
    vaporSource: POINT6,
  },
  {
    name: "spruce-pine-fir lumber",
    also: ["spf", "spruce-pine-fir", "spf lumber", "lumber", "softwood", "spruce", "wood", "timber"],
    heat: k(0.13),
    heatSource: F2021,
    ...WOOD_MU,
  },
  {
    name: "douglas-fir lumber",
    also: ["douglas-fir", "douglas fir", "larch"],
    heat: k(0.15),
    heatSource: F2021,
    ...WOOD_MU,
  },
  { name: "southern pine lumber", also: ["southern pine"], heat: k(0.16), heatSource: F2021, ...WOOD_MU },
  { name: "wood siding", also: ["cedar siding", "western red cedar"], heat: k(0.09), heatSource: F2005, ...WOOD_MU },
  {
    name: "fiber-cement board",
    also: ["fiber cement", "fibre cement", "fiber cement siding", "fiber-cement siding"],
    heat: k(0.25),
    heatSource: F2021,
    vapor: mu(125),
    vaporSource: POINT6,
  },
  {
    name: "brick",
    also: ["clay brick", "brick veneer"],
    heat: k(0.895),
    heatSource: F2005,
    vapor: mu(19.59),
    vaporSource: MOIST,
  },
  {
    name: "concrete",
    also: ["normal-weight concrete"],
    heat: k(1.95),
    heatSource: F2005,
    vapor: mu(180),
    vaporSource: MOIST,
  },
  {
    name: "stucco",
    also: ["cement mortar", "cement stucco", "mortar"],
    heat: k(1.4),
    heatSource: F2005,
    vapor: mu(25),
    vaporSource: `${DIN} (lime-cement render)`,
  },
  {
    name: "steel sheet",
    also: ["steel", "metal siding", "metal panel"],
    heat: k(45.28),
    heatSource: F2005,
    vapor: sd(1500),
    vaporSource: "taken as vapor-tight: sd 1500 m, the convention of DIN 4108-3",
  },
  {
    name: "bitumen sheet",
    also: ["peel and stick membrane", "self-adhered bitumen membrane", "modified bitumen"],
    heat: k(0.17),
    heatSource: DIN,
    vapor: mu(20000),
    vaporSource: DIN,
  },
  { name: "vinyl siding", also: ["hollow-backed siding"], heat: r(0.11), heatSource: F2021 },
  { name: "asphalt shingles", also: ["shingles"], heat: r(0.078), heatSource: F2021 },
  { name: "wood shingles", also: ["cedar shingles"], heat: r(0.166), heatSource: F2021 },
  {
    name: "built-up roofing",
    also: ["built up roofing"],
    heat: r(0.059),
    heatSource: F2021,
    vapor: sd(1000),
    vaporSource: `${DIN}: roofing membrane, mu 100000 at 10 mm`,
  },
  { name: "carpet and pad", also: ["carpet"], heat: r(0.42), heatSource: F2021 },
  {
    name: "asphalt felt",
    also: ["felt", "tar paper", "15 lb felt"],
    heat: r(0.011),
    heatSource: F2021,
    vapor: cups(57, 320),
    vaporSource: POINT5,
  },
  {
    name: "sheathing paper",
    also: ["building paper", "asphalt sheathing paper"],
    heat: r(0),
    heatSource: "thin membrane, no R counted",
    vapor: cups(190, 1160),
    vaporSource: POINT5,
  },
  {
    name: "polyethylene sheet",
    also: ["polyethylene", "poly", "poly sheet", "6 mil poly"],
    heat: r(0),
    heatSource: "thin membrane, no R counted",
    vapor: sd(SD_M_NG / 3.4),
    vaporSource: `${POINT5} (0.15 mm)`,
  },
  {
    name: "aluminum foil",
    also: ["foil", "aluminium foil"],
    heat: r(0),
    heatSource: "thin membrane, no R counted",
    vapor: sd(SD_M_NG / 2.9),
    vaporSource: `${POINT5} (0.009 mm)`,
  },
  {
    name: "kraft facing",
    also: ["kraft paper", "kraft"],
    heat: r(0),
    heatSource: "thin membrane, no R counted",
    vapor: cups(17, 103),
    vaporSource: `${POINT5} (asphalt-laminated, reinforced)`,
  },
  {
    name: "variable-permeance membrane",
    also: ["smart membrane", "smart vapor retarder", "variable membrane"],
    heat: r(0),
    heatSource: "thin membrane, no R counted",
    vapor: cups(62.9, 1174),
    vaporSource: `${POINT5} (polyamide film)`,
  },
  {
    name: "vapor retarder paint",
    also: ["vapour retarder paint"],
    heat: r(0),
    heatSource: "paint film, no R counted",
    vapor: sd(SD_M_NG / 26),
    vaporSource: POINT5,
  },
  {
    name: "acrylic enamel paint",
    also: ["paint", "latex paint", "enamel paint"],
    heat: r(0),
    heatSource: "paint film, no R counted",
    vapor: sd(SD_M_NG / 378),
    vaporSource: POINT5,
  },
  {
    name: "vapor-open membrane",
    also: ["wrb", "water-resistive barrier", "housewrap", "vapor open membrane", "vapour-open membrane", "membrane"],
    heat: r(0),
    heatSource: "thin membrane, no R counted",
    vapor: sd(0.1),
    vaporSource: "sd 0.1 m, the upper limit of the vapor-open class in DIN 4108-3",
    vaporCaution:
      "Vapor-open membrane: sd 0.1 m (about 35 perm) is assumed. Sheets range from under 1 to over 100 perm: give the sheet's own perm.",
  },
  {
    name: "air space",
    also: ["air", "cavity", "air layer", "furring cavity"],
    heat: { kind: "air", emittances: [0.9, 0.9] },
    heatSource: "ISO 6946:2017 Annex D",
    vapor: sd(0.01),
    vaporSource: "DIN 4108-3 A.2.3: sd 0.01 m for an air layer",
  },
  {
    name: "reflective air space",
    also: ["air space, reflective", "foil-faced air space"],
    heat: { kind: "air", emittances: [0.9, 0.05] },
    heatSource: "ISO 6946:2017 Annex D",
    vapor: sd(0.01),
    vaporSource: "DIN 4108-3 A.2.3: sd 0.01 m for an air layer",
    heatCaution:
      "Reflective air space: emittance 0.05 on one face holds only while the foil stays clean, dry and facing still air.",
  },
];
