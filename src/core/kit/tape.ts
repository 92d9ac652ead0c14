import type { PictureBase } from "./picture.ts";

/** One value in a cell. */
export type Cell = number | string | boolean;

/** Rows of cells, all of the same length. */
export type Table = readonly (readonly Cell[])[];

/** One line of the working. */
export interface Step {
  /** the field's symbol for the value: "q", "Kz", "R_T" */
  readonly symbol: string;
  /** how it comes about, with numbers put in where that helps: "0.00256 Kz Kzt Kd Ke V^2" */
  readonly expression: string;
  readonly value: Cell | Table;
  /** unit of the value, "" where it has none */
  readonly unit: string;
  /** document, edition, clause, equation or table */
  readonly clause: string;
}

/**
 * The working of one calculation. The code that computes a number writes its steps here when it is given a tape;
 * call it through `tape?.step(...)`, so that without one not even the texts are made.
 * The last step holds what the calculation returns.
 */
export class Tape {
  readonly steps: Step[] = [];
  readonly assumptions: string[] = [];
  readonly cautions: string[] = [];
  readonly pictures: PictureBase[] = [];

  step(symbol: string, expression: string, value: Cell | Table, unit: string, clause = ""): void {
    this.steps.push({ symbol, expression, value, unit, clause });
  }

  /** Something taken as given that no argument states. */
  assume(sentence: string): void {
    if (!this.assumptions.includes(sentence)) this.assumptions.push(sentence);
  }

  /** Something the reader must know before using the result. */
  caution(sentence: string): void {
    if (!this.cautions.includes(sentence)) this.cautions.push(sentence);
  }

  /** The data of a picture; drawing it is the pane's business. */
  show(picture: PictureBase): void {
    this.pictures.push(picture);
  }
}
