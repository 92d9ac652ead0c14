import { real, whole } from "./at.ts";
/** Sorts the first `n` items by key, largest key first; for small arrays, without allocation. */
export function sortDown(keys: Float64Array, items: Int32Array, n: number): void {
  for (const gap of [57, 23, 10, 4, 1]) {
    for (let i = gap; i < n; i++) {
      const key = real(keys, i);
      const item = whole(items, i);
      let j = i;
      for (; j >= gap && real(keys, j - gap) < key; j -= gap) {
        keys[j] = real(keys, j - gap);
        items[j] = whole(items, j - gap);
      }
      keys[j] = key;
      items[j] = item;
    }
  }
}
