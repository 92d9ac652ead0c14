/** Markup that is safe to join: made by `html` only. */
export class Html {
  readonly markup: string;
  constructor(markup: string) {
    this.markup = markup;
  }
  toString(): string {
    return this.markup;
  }
}

type Part = Html | string | number | boolean | readonly Part[];

const ENTITIES: Readonly<Record<string, string>> = {
  "&": "&amp;",
  "<": "&lt;",
  ">": "&gt;",
  '"': "&quot;",
  "'": "&#39;",
};

/** Text as it may stand in an element or in a quoted attribute of HTML or XML. */
export function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => ENTITIES[sign] ?? "");
}

/** A template whose parts are escaped, unless they are markup already. */
export function html(strings: TemplateStringsArray, ...parts: readonly Part[]): Html {
  return new Html(strings.map((text, i) => text + (i < parts.length ? markupOf(parts[i] as Part) : "")).join(""));
}

function markupOf(part: Part): string {
  if (part instanceof Html) return part.markup;
  if (Array.isArray(part)) return part.map(markupOf).join("");
  return escaped(String(part));
}
