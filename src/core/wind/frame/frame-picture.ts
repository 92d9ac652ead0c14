import { type Building, isSloped, riseFt } from "../building.ts";
import type { FrameFace, FrameView, WindFramePicture } from "../pictures.ts";
import type { FrameRow } from "./frame.ts";

type Corner = readonly [xFt: number, yFt: number];

/** A face of a section: its ends, and the words of the rows that lie on it. */
interface Placed {
  readonly name: string;
  readonly from: Corner;
  readonly to: Corner;
  readonly holds: (surface: string) => boolean;
}

const named = (name: string, from: Corner, to: Corner): Placed => ({
  name,
  from,
  to,
  holds: (surface) => surface.startsWith(name),
});

/** The building in section across the ridge and along it, each face with the least and greatest net pressure of its rows. */
export function framePicture(building: Building, rows: readonly FrameRow[]): WindFramePicture {
  const views = [
    view("Wind across the ridge, from the left", across(building), rows.filter(isAcross)),
    view(
      "Wind along the ridge, from the left",
      along(building),
      rows.filter((r) => !isAcross(r)),
    ),
  ];
  const worst = Math.min(...rows.map((r) => r.withPressurePsf));
  const most = Math.max(...rows.map((r) => r.withSuctionPsf));
  return {
    kind: "wind-frame",
    alt: `The building in section with its net wind pressures, from ${worst.toFixed(1)} to ${most.toFixed(1)} psf.`,
    views,
  };
}

function isAcross({ wind }: FrameRow): boolean {
  return wind.includes("across");
}

function view(name: string, faces: readonly Placed[], rows: readonly FrameRow[]): FrameView {
  return { name, faces: faces.map((face) => measured(face, rows)).filter((f) => f.leastPsf <= f.mostPsf) };
}

/** The range over all rows on a face; a face without rows has an empty one. */
function measured({ name, from, to, holds }: Placed, rows: readonly FrameRow[]): FrameFace {
  const on = rows.filter((r) => holds(r.surface));
  return {
    name,
    from,
    to,
    leastPsf: Math.min(...on.map((r) => r.withPressurePsf)),
    mostPsf: Math.max(...on.map((r) => r.withSuctionPsf)),
  };
}

const anyRoof = (from: Corner, to: Corner): Placed => ({ name: "roof", from, to, holds: (s) => !s.includes("wall") });

function across(building: Building): readonly Placed[] {
  const { widthFt, eaveFt, roof } = building;
  const top = eaveFt + riseFt(building);
  const right = roof === "monoslope" ? top : eaveFt;
  const slopes: readonly Placed[] =
    roof === "flat" || roof === "monoslope" || !isSloped(building)
      ? roofOver(building, top)
      : [
          named("windward roof", [0, eaveFt], [widthFt / 2, top]),
          named("leeward roof", [widthFt / 2, top], [widthFt, eaveFt]),
        ];
  return [
    named("windward wall", [0, 0], [0, eaveFt]),
    ...slopes,
    named("leeward wall", [widthFt, right], [widthFt, 0]),
  ];
}

/** One roof face, or the two slopes of a low gable, which have the same rows. */
function roofOver({ widthFt, eaveFt, roof }: Building, top: number): readonly Placed[] {
  if (roof === "flat" || roof === "monoslope") return [anyRoof([0, eaveFt], [widthFt, top])];
  return [anyRoof([0, eaveFt], [widthFt / 2, top]), anyRoof([widthFt / 2, top], [widthFt, eaveFt])];
}

function along(building: Building): readonly Placed[] {
  const { lengthFt, widthFt, eaveFt, roof } = building;
  const top = eaveFt + riseFt(building);
  const inset = roof === "hip" ? Math.min(widthFt, lengthFt) / 2 : 0;
  const wallTop = roof === "hip" ? eaveFt : top;
  const ends: readonly [readonly Placed[], readonly Placed[]] =
    roof === "hip" && isSloped(building)
      ? [
          [named("windward hip end", [0, eaveFt], [inset, top])],
          [named("leeward hip end", [lengthFt - inset, top], [lengthFt, eaveFt])],
        ]
      : [[], []];
  const roofFace: Placed = {
    name: "roof",
    from: [inset, top],
    to: [lengthFt - inset, top],
    holds: (s) => s.startsWith("roof"),
  };
  const wall = (side: string, from: Corner, to: Corner): Placed => ({
    name: `${side} end wall`,
    from,
    to,
    holds: (s) => s.startsWith(`${side} wall`) || s.startsWith(`${side} end wall`),
  });
  return [
    wall("windward", [0, 0], [0, wallTop]),
    ...ends[0],
    roofFace,
    ...ends[1],
    wall("leeward", [lengthFt, wallTop], [lengthFt, 0]),
  ];
}
