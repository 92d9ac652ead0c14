/** A place that the program took to be filled and is not: a fault of the program, not of what was given to it. */
class EmptyPlace extends Error {
  constructor(index: number, length: number) {
    super(`Place ${index} of ${length} is empty`);
    this.name = "EmptyPlace";
  }
}

/** The entry at a place that is filled. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new EmptyPlace(index, list.length);
  return entry;
}

/** As `at`, for plain numbers in the innermost loops: one kind of array, so that the machine reads it directly. */
export function real(list: Float64Array, index: number): number {
  const entry = list[index];
  if (entry === undefined) throw new EmptyPlace(index, list.length);
  return entry;
}

/** As `real`, for whole numbers. */
export function whole(list: Int32Array, index: number): number {
  const entry = list[index];
  if (entry === undefined) throw new EmptyPlace(index, list.length);
  return entry;
}

/** As `real`, for lists of plain numbers. */
export function listed(list: readonly number[], index: number): number {
  const entry = list[index];
  if (entry === undefined) throw new EmptyPlace(index, list.length);
  return entry;
}
