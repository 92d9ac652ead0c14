/**
 * Data for the pictures beside the working. The core states what there is to see, in plain numbers and texts;
 * src/pane/drawings draws it. Each kind stands in the family that makes it.
 */
export interface PictureBase {
  readonly kind: string;
  /** one sentence that says in words what the picture shows, for readers who cannot see it */
  readonly alt: string;
}
