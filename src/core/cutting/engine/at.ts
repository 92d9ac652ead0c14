/** A place that the program took to be filled and is not: a fault of the program, not of what was given to it. */
class EmptyPlace extends Error {
  constructor(index: number, length: number) {
    super(`Place ${index} of ${length} is empty`);
    this.name = "EmptyPlace";
  }
}

/** The entry at a place that is filled. The innermost loops read numbers without it, since a call for each costs more than the sum. */
export function at<T>(list: ArrayLike<T>, index: number): T {
  const entry = list[index];
  if (entry === undefined) throw new EmptyPlace(index, list.length);
  return entry;
}
