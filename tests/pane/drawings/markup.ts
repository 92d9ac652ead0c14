/** The markup of a template without a page: its fixed texts with its values between them, attributes in quotes. */
export function markup(value: unknown): string {
  if (Array.isArray(value)) return value.map(markup).join("");
  if (typeof value !== "object" || value === null) return escaped(String(value));
  const { strings, values } = value as { strings: readonly string[]; values: readonly unknown[] };
  return strings
    .map((text, i) => {
      if (i === values.length) return text;
      return /=$/.test(text) ? `${text}"${escaped(String(values[i]))}"` : `${text}${markup(values[i])}`;
    })
    .join("");
}

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (c) => ({ "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" })[c] ?? c);
}

/** Names of the elements that are open at the end, or that were closed without being open: none in sound markup. */
export function unbalanced(text: string): readonly string[] {
  const open: string[] = [];
  for (const [, closes, name = ""] of text.matchAll(/<(\/?)([a-z]+)[^>]*>/gi)) {
    if (closes === "") open.push(name);
    else if (open.pop() !== name) return [name];
  }
  return open;
}
