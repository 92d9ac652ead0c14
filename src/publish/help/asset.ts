/** A file of the built add-in; the path is relative to its folder. */
export interface Asset {
  readonly path: string;
  readonly content: string;
}
