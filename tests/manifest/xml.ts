/** An element of a manifest: the subset of XML that manifests use, read strictly. */
export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly Element[];
  /** the text directly inside, trimmed */
  readonly text: string;
}

interface Growing {
  name: string;
  attributes: Record<string, string>;
  children: Growing[];
  text: string;
}

const TOKEN =
  /<!--[\s\S]*?-->|<\?[\s\S]*?\?>|<\/([\w:.-]+)\s*>|<([\w:.-]+)((?:\s+[\w:.-]+\s*=\s*(?:"[^"<]*"|'[^'<]*'))*)\s*(\/?)>|[^<]+/gy;
const ATTRIBUTE = /([\w:.-]+)\s*=\s*(?:"([^"]*)"|'([^']*)')/g;
const ENTITIES: Readonly<Record<string, string>> = { amp: "&", lt: "<", gt: ">", quot: '"', apos: "'" };

/**
 * Reads a manifest.
 * @throws an error with the place when the text is not well formed
 */
export function parseXml(source: string): Element {
  const root: Growing = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  let end = 0;
  for (const match of source.matchAll(TOKEN)) {
    end = match.index + match[0].length;
    const inside = open.at(-1) as Growing;
    const [whole, closed, opened, attributes = "", empty] = match;
    if (opened !== undefined) {
      const element = { name: opened, attributes: attributesOf(attributes, opened), children: [], text: "" };
      inside.children.push(element);
      if (empty === "") open.push(element);
    } else if (closed !== undefined) {
      if (inside.name !== closed) throw new Error(`</${closed}> closes <${inside.name}>`);
      inside.text = inside.text.trim();
      open.pop();
    } else if (!whole.startsWith("<")) inside.text += unescaped(whole);
  }
  if (end !== source.length) throw new Error(`not well formed at "${source.slice(end, end + 40)}"`);
  if (open.length > 1) throw new Error(`<${open.at(-1)?.name}> is not closed`);
  const [top, ...others] = root.children;
  if (top === undefined || others.length > 0 || root.text.trim() !== "")
    throw new Error("there must be one root element");
  return top;
}

function attributesOf(text: string, element: string): Record<string, string> {
  const attributes: Record<string, string> = {};
  for (const [, name = "", double, single] of text.matchAll(ATTRIBUTE)) {
    if (Object.hasOwn(attributes, name)) throw new Error(`<${element}> has ${name} twice`);
    attributes[name] = unescaped(double ?? single ?? "");
  }
  return attributes;
}

function unescaped(text: string): string {
  return text.replace(/&(#?)(\w*);?/g, (whole, number: string, name: string) => {
    const sign = number === "" ? ENTITIES[name] : String.fromCodePoint(Number(name));
    if (sign === undefined || !whole.endsWith(";")) throw new Error(`${whole} is no entity`);
    return sign;
  });
}
