import { strFromU8, unzlibSync } from "fflate";

/** The text of a PDF that Chromium prints, in the order in which it is drawn: each font's table says which characters its glyphs stand for. */
export function pdfText(bytes: Uint8Array): string {
  const objects = new Map<string, string>();
  for (const [, id = "", body = ""] of strFromU8(bytes, true).matchAll(/(?<=^|\n)(\d+) 0 obj\s(.*?)\bendobj/gs))
    objects.set(id, body);
  const fonts = new Map<string, Map<string, string>>();
  for (const body of objects.values()) {
    for (const [, name = "", id = ""] of body.matchAll(/\/(F\d+) (\d+) 0 R/g)) {
      const table = /\/ToUnicode (\d+) 0 R/.exec(objects.get(id) ?? "")?.[1];
      if (table !== undefined) fonts.set(name, glyphs(streamOf(objects.get(table) ?? "")));
    }
  }
  const drawn = [...objects.values()].filter((body) => /\/Length/.test(body)).map(streamOf);
  return drawn
    .filter((content) => /\bBT\b/.test(content))
    .map((content) => textOf(content, fonts))
    .join("\n");
}

function streamOf(body: string): string {
  const [, head = "", data = ""] = /^(.*?)stream\r?\n(.*)\r?\nendstream/s.exec(body) ?? [];
  const raw = Uint8Array.from(data, (character) => character.charCodeAt(0));
  return head.includes("/FlateDecode") ? strFromU8(unzlibSync(raw), true) : data;
}

/** Glyph numbers, four hexadecimal digits each, with their characters. */
function glyphs(table: string): Map<string, string> {
  const found = new Map<string, string>();
  const character = (code: string): string =>
    String.fromCharCode(...(code.match(/.{4}/g) ?? []).map((unit) => Number.parseInt(unit, 16)));
  for (const [, block = ""] of table.matchAll(/beginbfchar(.*?)endbfchar/gs))
    for (const [, glyph = "", code = ""] of block.matchAll(/<(\w+)> <(\w+)>/g)) found.set(glyph, character(code));
  for (const [, block = ""] of table.matchAll(/beginbfrange(.*?)endbfrange/gs)) {
    for (const [, first = "", last = "", code = ""] of block.matchAll(/<(\w+)> <(\w+)> <(\w+)>/g)) {
      const from = Number.parseInt(first, 16);
      for (let glyph = from; glyph <= Number.parseInt(last, 16); glyph++) {
        const at = (Number.parseInt(code, 16) + glyph - from).toString(16).padStart(4, "0");
        found.set(glyph.toString(16).toUpperCase().padStart(4, "0"), character(at));
      }
    }
  }
  return found;
}

function textOf(content: string, fonts: ReadonlyMap<string, ReadonlyMap<string, string>>): string {
  let font: ReadonlyMap<string, string> | undefined;
  let text = "";
  for (const [, name, hex, ends] of content.matchAll(/\/(F\d+) [\d.]+ Tf|<([0-9A-F]+)>|\b(ET)\b/g)) {
    if (name !== undefined) font = fonts.get(name);
    else if (ends !== undefined) text += " ";
    else text += (hex?.match(/.{4}/g) ?? []).map((glyph) => font?.get(glyph) ?? "?").join("");
  }
  return text;
}
