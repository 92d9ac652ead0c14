import { renumbered } from "../../kit/edition.ts";

/** Where the editions of ASCE/SEI 7 keep what the wind functions use. */
export const CLAUSE = {
  terrain: renumbered("Table 26.9-1", "Table 26.11-1"),
  internalPressure: renumbered("Table 26.11-1", "Table 26.13-1"),
  gustFactor: renumbered("26.9", "26.11"),
  debris: renumbered("26.10.3.1", "26.12.3.1"),
  openBuildings: renumbered("30.8", "30.7"),
  frameFigure: renumbered("Fig. 27.4-1", "Fig. 27.3-1"),
  frameEquation: renumbered("Eq. 27.4-1", "Eq. 27.3-1"),
  frameSection: renumbered("27.4.1", "27.3.1"),
  frameOverhang: renumbered("27.4.4", "27.3.3"),
  frameParapet: renumbered("27.4.5", "27.3.4"),
  frameLeast: renumbered("27.4.7", "27.1.5"),
  frameCases: renumbered("Fig. 27.4-8", "Fig. 27.3-8"),
  envelopeFigure: renumbered("Fig. 28.4-1", "Fig. 28.3-1"),
  envelopeEquation: renumbered("Eq. 28.4-1", "Eq. 28.3-1"),
  cladding: renumbered("30.4", "30.3"),
  claddingEquation: renumbered("Eq. 30.4-1", "Eq. 30.3-1"),
  claddingParapet: renumbered("30.9", "30.8"),
  claddingLowRise: renumbered("chapter 30, part 1", "chapter 30, 30.3"),
  walls: renumbered("Fig. 30.4-1", "Fig. 30.3-1"),
  flatRoofs: renumbered("Fig. 30.4-2A", "Fig. 30.3-2A"),
} as const;
