/**
 * Insulation, fenestration and air leakage by component of the residential energy code, by climate zone. Zone "4C" is marine 4. R in h ft2 F/Btu, "13+5" is
 * cavity and continuous, "8/13" continuous or (behind the mass) cavity; U in Btu/(h ft2 F), of slab edges F in Btu/(h ft F).
 * Figures that editions share stand once. A cell is `read` where it stood in a print of its edition that was read; `checked` where it did not, but prints of an
 * earlier and of a later edition (2006 or 2009, and 2018 or 2021) hold the same figure; else it is from `memory`. The answer says which.
 */
export const CODE_EDITIONS = [
  "2012",
  "2015",
  "2018",
  "2021",
  "2024",
  "Idaho 2018",
  "Washington 2021",
  "New York 2025",
] as const;
export type CodeEdition = (typeof CODE_EDITIONS)[number];
export type CodeKind = "R" | "U" | "ACH50";

export interface CodeColumn {
  readonly editions: readonly CodeEdition[];
  readonly kind: CodeKind;
  readonly part: string;
  /** cell by zones, several zones in one key: "7 8" */
  readonly byZones: Readonly<Record<string, string>>;
  /** zones whose cell was read in a print of the edition */
  readonly read: Partial<Readonly<Record<CodeEdition, string>>>;
  /** zones whose cell stands in prints of editions on both sides */
  readonly checked: string;
}

const iecc = (year: string, r: string, u: string) => ({
  R: `IECC ${year} Table ${r}`,
  U: `IECC ${year} Table ${u}`,
  ACH50: `IECC ${year} R402.4.1`,
});

/** Where the columns stand. */
export const CODE_SOURCE: Readonly<Record<CodeEdition, Readonly<Record<CodeKind, string>>>> = {
  "2012": iecc("2012", "R402.1.1", "R402.1.3"),
  "2015": iecc("2015", "R402.1.2", "R402.1.4"),
  "2018": {
    R: "IECC/IRC 2018 Table R402.1.2 (N1102.1.2)",
    U: "IECC 2018 Tables R402.1.2 and R402.1.4",
    ACH50: "IECC 2018 R402.4.1.2",
  },
  "2021": { ...iecc("2021", "R402.1.3", "R402.1.2"), ACH50: "IECC 2021 R402.4.1.3" },
  "2024": iecc("2024", "R402.1.3", "R402.1.2"),
  "Idaho 2018": {
    R: "Idaho administrative rule 24.39.30.600.06 (amended IECC 2018)",
    U: "Idaho administrative rule 24.39.30.600.06 (amended IECC 2018)",
    ACH50: "Idaho administrative rule 24.39.30.600.06 (amended IECC 2018)",
  },
  "Washington 2021": {
    R: "Washington State Energy Code 2021",
    U: "Washington State Energy Code 2021, WAC 51-11R-40211",
    ACH50: "Washington State Energy Code 2021",
  },
  "New York 2025": {
    R: "New York 2025 energy code Table R402.1.3 (based on IECC 2024)",
    U: "New York 2025 energy code Table R402.1.2 (based on IECC 2024)",
    ACH50: "New York 2025 energy code Table R402.5.1.3 (based on IECC 2024)",
  },
};

/** Editions of a shared table, the last zone group `0` of 2021 alone standing in a column of its own. */
const TO_2018 = ["2012", "2015", "2018"] as const;
const TO_2021 = ["2012", "2015", "2018", "2021"] as const;
const ALL = "1 2 3 4 4C 5 6 7 8";

const shared = (
  editions: readonly CodeEdition[],
  kind: CodeKind,
  part: string,
  byZones: Readonly<Record<string, string>>,
  read: CodeColumn["read"] = {},
  checked = "",
): CodeColumn => ({ editions, kind, part, byZones, read, checked });

/** A column of one edition, read throughout or not at all. */
const column = (
  edition: CodeEdition,
  kind: CodeKind,
  part: string,
  known: "read" | "memory",
  byZones: Readonly<Record<string, string>>,
): CodeColumn =>
  shared([edition], kind, part, byZones, known === "read" ? { [edition]: Object.keys(byZones).join(" ") } : {});

export const CODE_COLUMNS: readonly CodeColumn[] = [
  // The table of insulation R is one from 2012 to 2018; its print of 2018 was read.
  shared(TO_2018, "R", "ceiling", { "1": "30", "2 3": "38", "4 4C 5 6 7 8": "49" }, { "2018": ALL }, "1 6 7 8"),
  shared(
    TO_2018,
    "R",
    "wood wall",
    { "1 2": "13", "3 4 4C 5": "20 or 13+5", "6 7 8": "20+5 or 13+10" },
    { "2018": ALL },
    "1 2 4C 5",
  ),
  shared(
    TO_2018,
    "R",
    "mass wall",
    { "1": "3/4", "2": "4/6", "3 4": "8/13", "4C 5": "13/17", "6": "15/20", "7 8": "19/21" },
    { "2018": ALL },
    "1 2 4C 5 7 8",
  ),
  shared(
    TO_2018,
    "R",
    "floor",
    { "1 2": "13", "3 4": "19", "4C 5 6": "30", "7 8": "38" },
    { "2018": ALL },
    "1 2 3 4 4C 5 6",
  ),
  shared(
    TO_2018,
    "R",
    "basement wall",
    { "1 2": "0", "3": "5/13", "4": "10/13", "4C 5 6 7 8": "15/19" },
    { "2018": ALL },
    "1 2 4",
  ),
  shared(TO_2018, "R", "slab", { "1 2 3": "0", "4 4C 5": "10 to 2 ft", "6 7 8": "10 to 4 ft" }, { "2018": ALL }, ALL),
  shared(
    TO_2018,
    "R",
    "crawl wall",
    { "1 2": "0", "3": "5/13", "4": "10/13", "4C 5 6 7 8": "15/19" },
    { "2018": ALL },
    "1 2 3 4",
  ),
  shared(TO_2018, "U", "skylight", { "1": "0.75", "2": "0.65", "3 4 4C 5 6 7 8": "0.55" }, { "2018": ALL }, "1"),
  shared(TO_2018, "U", "SHGC", { "1 2 3": "0.25", "4": "0.40", "4C 5 6 7 8": "NR" }, { "2018": ALL }, "4C 5 6 7 8"),
  shared(["2012", "2015"], "U", "window", { "1": "NR", "2": "0.40", "3 4": "0.35", "4C 5 6 7 8": "0.32" }),
  shared(
    ["2018"],
    "U",
    "window",
    { "1": "NR", "2": "0.40", "3 4": "0.32", "4C 5 6 7 8": "0.30" },
    { "2018": "1 2 4 4C 5 6 7 8" },
  ),
  shared(["2012"], "U", "wood wall", { "1 2": "0.082", "3 4 4C 5": "0.057", "6 7 8": "0.048" }),
  shared(["2015", "2018"], "U", "wood wall", { "1 2": "0.084", "3 4 4C 5": "0.060", "6 7 8": "0.045" }),
  shared(TO_2018, "U", "ceiling", { "1": "0.035", "2 3": "0.030", "4 4C 5 6 7 8": "0.026" }),
  shared(TO_2021, "U", "mass wall", {
    "1": "0.197",
    "2": "0.165",
    "3 4": "0.098",
    "4C 5": "0.082",
    "6": "0.060",
    "7 8": "0.057",
  }),
  shared(
    TO_2021,
    "U",
    "floor",
    { "1 2": "0.064", "3 4": "0.047", "4C 5 6": "0.033", "7 8": "0.028" },
    { "2021": "4C 5 6 7 8" },
    "4C 5 6 8",
  ),
  shared(
    TO_2021,
    "U",
    "basement wall",
    { "1 2": "0.360", "3": "0.091", "4": "0.059", "4C 5 6 7 8": "0.050" },
    { "2021": "4C 5 6 7 8" },
  ),
  shared(TO_2021, "U", "crawl wall", { "1 2": "0.477", "3": "0.136", "4": "0.065", "4C 5 6 7 8": "0.055" }),
  shared(TO_2021, "ACH50", "air leakage", { "1 2": "5", "3 4 4C 5 6 7 8": "3" }, { "2018": ALL, "2021": ALL }),
  column("2021", "U", "mass wall", "memory", { "0": "0.197" }),
  column("2021", "U", "floor", "memory", { "0": "0.064" }),
  column("2021", "U", "basement wall", "memory", { "0": "0.360" }),
  column("2021", "U", "crawl wall", "memory", { "0": "0.477" }),
  column("2021", "ACH50", "air leakage", "read", { "0": "5" }),
  column("2021", "R", "wood wall", "read", {
    "0 1 2": "13 or 0+10",
    "3": "20 or 13+5 or 0+15",
    "4 4C 5 6 7 8": "30 or 20+5 or 13+10 or 0+20",
  }),
  column("2021", "R", "ceiling", "memory", { "0": "30", "2 3": "49", "4C 5 7 8": "60" }),
  column("2021", "R", "ceiling", "read", { "1": "30", "4 6": "60" }),
  column("2021", "R", "mass wall", "read", { "1": "3/4" }),
  column("2021", "R", "floor", "read", { "1": "13", "6": "30" }),
  column("2021", "R", "basement wall", "read", { "1": "0", "6": "15 or 19 or 13+5" }),
  column("2021", "R", "slab", "read", { "1": "0" }),
  column("2021", "R", "crawl wall", "read", { "1": "0" }),
  column("2021", "U", "window", "memory", { "0 1": "0.50", "2": "0.40", "3 4": "0.30" }),
  column("2021", "U", "window", "read", { "4C 5 6 7 8": "0.30" }),
  column("2021", "U", "skylight", "memory", { "0 1": "0.75", "2": "0.65", "3 4 4C 5 6 7 8": "0.55" }),
  column("2021", "U", "SHGC", "memory", { "0 1 2 3": "0.25", "4 4C 5": "0.40", "6 7 8": "NR" }),
  column("2021", "U", "ceiling", "memory", { "0 1": "0.035", "2 3": "0.026", "4": "0.024" }),
  column("2021", "U", "ceiling", "read", { "4C 5 6 7 8": "0.024" }),
  column("2021", "U", "wood wall", "memory", { "0 1 2": "0.084", "3": "0.060", "4": "0.045" }),
  column("2021", "U", "wood wall", "read", { "4C 5 6 7 8": "0.045" }),
  column("Washington 2021", "U", "window", "read", { "4C 5": "0.30" }),
  column("Washington 2021", "U", "skylight", "read", { "4C 5": "0.50" }),
  column("Washington 2021", "U", "ceiling", "read", { "4C 5": "0.024" }),
  column("Washington 2021", "U", "wood wall", "read", { "4C 5": "0.056" }),
  column("Washington 2021", "U", "floor", "read", { "4C 5": "0.029" }),
  column("Washington 2021", "U", "slab edge", "read", { "4C 5": "0.54" }),
  column("Washington 2021", "U", "below-grade wall to 2 ft", "read", { "4C 5": "0.042" }),
  column("Washington 2021", "U", "slab edge below 2 ft", "read", { "4C 5": "0.59" }),
  column("Washington 2021", "U", "below-grade wall to 3.5 ft", "read", { "4C 5": "0.040" }),
  column("Washington 2021", "U", "slab edge below 3.5 ft", "read", { "4C 5": "0.56" }),
  column("Washington 2021", "U", "below-grade wall to 7 ft", "read", { "4C 5": "0.035" }),
  column("Washington 2021", "U", "slab edge below 7 ft", "read", { "4C 5": "0.50" }),
  column("New York 2025", "R", "ceiling", "read", { "4 5 6": "49" }),
  column("New York 2025", "R", "roof above deck", "read", { "4 5 6": "30" }),
  column("New York 2025", "R", "wood wall", "read", { "4 5 6": "30 or 20+5 or 13+10 or 0+20" }),
  column("New York 2025", "R", "mass wall", "read", { "4 5 6": "15/20" }),
  column("New York 2025", "R", "floor", "read", { "4 5 6": "30 or 19+7.5 or 0+20" }),
  column("New York 2025", "R", "basement wall", "read", { "4 5 6": "15 or 19 or 13+5" }),
  column("New York 2025", "R", "crawl wall", "read", { "4 5 6": "15 or 19 or 13+5" }),
  column("New York 2025", "R", "slab", "read", { "4 5 6": "10 to 4 ft" }),
  column("New York 2025", "R", "heated slab", "read", { "4 5 6": "10 to 4 ft and 10 full slab" }),
  column("New York 2025", "U", "window", "read", { "4 5 6": "0.27" }),
  column("New York 2025", "U", "skylight", "read", { "4 5 6": "0.50" }),
  column("New York 2025", "U", "ceiling", "read", { "4 5 6": "0.026" }),
  column("New York 2025", "U", "wood wall", "read", { "4 5 6": "0.045" }),
  column("New York 2025", "U", "floor", "read", { "4 5 6": "0.033" }),
  column("New York 2025", "U", "basement wall", "read", { "4 5 6": "0.050" }),
  column("New York 2025", "U", "crawl wall", "read", { "4 5 6": "0.055" }),
  column("New York 2025", "U", "slab edge", "read", { "4 5 6": "0.48" }),
  column("New York 2025", "U", "heated slab edge", "read", { "4 5 6": "0.55" }),
  column("New York 2025", "U", "SHGC", "read", { "4 5": "0.40", "6": "NR" }),
  column("Idaho 2018", "U", "window", "read", { "5": "0.32", "6": "0.30" }),
  column("Idaho 2018", "U", "skylight", "read", { "5 6": "0.55" }),
  column("Idaho 2018", "U", "SHGC", "read", { "5 6": "NR" }),
  column("Idaho 2018", "U", "ceiling", "read", { "5": "0.030", "6": "0.026" }),
  column("Idaho 2018", "U", "wood wall", "read", { "5": "0.060", "6": "0.057" }),
  column("Idaho 2018", "U", "floor", "read", { "5": "0.033" }),
  column("Idaho 2018", "R", "ceiling", "read", { "5": "38", "6": "49" }),
  column("Idaho 2018", "R", "wood wall", "read", { "5": "20 or 13+5", "6": "22 or 13+5" }),
  column("Idaho 2018", "R", "mass wall", "read", { "5": "13/17", "6": "15/20" }),
  column("Idaho 2018", "R", "floor", "read", { "5 6": "30" }),
  column("Idaho 2018", "R", "basement wall", "read", { "5 6": "15/19" }),
  column("Idaho 2018", "R", "slab", "read", { "5": "10 to 2 ft", "6": "10 to 4 ft" }),
  column("Idaho 2018", "R", "crawl wall", "read", { "5 6": "15/19" }),
  column("2024", "ACH50", "air leakage", "memory", { "0 1 2": "4", "3 4 4C 5": "3", "6 7 8": "2.5" }),
  column("New York 2025", "ACH50", "air leakage", "read", { "4 5": "3", "6": "2.5" }),
];
