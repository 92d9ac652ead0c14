/** Texts of ours that travel in a file's properties. A property holds 255 characters, so a longer text stands in several with numbers behind the key. */
const MARK = "Sillwork kept";
const LONGEST = 255;

export function asProperties(kept: Readonly<Record<string, string>> = {}): Record<string, string> {
  const properties: Record<string, string> = {};
  for (const [key, text] of Object.entries(kept)) {
    for (let i = 0; i * LONGEST < text.length; i++) {
      properties[`${MARK} ${key} ${i + 1}`] = text.slice(i * LONGEST, (i + 1) * LONGEST);
    }
  }
  return properties;
}

export function fromProperties(properties: Readonly<Record<string, unknown>> = {}): Record<string, string> {
  const parts = Object.entries(properties)
    .flatMap(([name, text]) => {
      const [, key, number] = new RegExp(`^${MARK} (.+) (\\d+)$`).exec(name) ?? [];
      return key === undefined || typeof text !== "string" ? [] : [{ key, number: Number(number), text }];
    })
    .sort((a, b) => a.number - b.number);
  const kept: Record<string, string> = {};
  for (const { key, text } of parts) kept[key] = `${kept[key] ?? ""}${text}`;
  return kept;
}
