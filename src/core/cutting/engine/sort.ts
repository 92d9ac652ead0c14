/** Sorts the first `n` items by key, largest key first; for small arrays, without allocation. */
export function sortDown(keys: Float64Array, items: Int32Array, n: number): void {
  for (const gap of [57, 23, 10, 4, 1]) {
    for (let i = gap; i < n; i++) {
      const key = keys[i] as number;
      const item = items[i] as number;
      let j = i;
      for (; j >= gap && (keys[j - gap] as number) < key; j -= gap) {
        keys[j] = keys[j - gap] as number;
        items[j] = items[j - gap] as number;
      }
      keys[j] = key;
      items[j] = item;
    }
  }
}
