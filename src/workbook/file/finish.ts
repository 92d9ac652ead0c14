import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

/** A calculation engine that the host knows: with 0 it would throw the stored values away and calculate everything on opening. */
const CALCULATION = '<calcPr calcId="191029"/>';
const ERROR = "#(?:VALUE!|N/A|DIV/0!|NUM!|REF!|NULL!|NAME\\?|SPILL!|CALC!|GETTING_DATA)";
/** A formula cell whose stored text is an error's name. */
const ERROR_AS_TEXT = new RegExp(`(<c [^>]*)t="str"([^>]*>(?:(?!</c>).)*<v>${ERROR}</v></c>)`, "g");
/** CT_Font of ISO/IEC 29500-1 18.8.22, in the order that Excel asks for. */
const FONT_PARTS = [
  ...["b", "i", "strike", "condense", "extend", "outline", "shadow", "u", "vertAlign"],
  ...["sz", "color", "name", "family", "charset", "scheme"],
];

/** A picture that ends in the cell where it begins, with its size. */
const SIZED_PICTURE =
  /<xdr:twoCellAnchor>(<xdr:from>(.*?)<\/xdr:from>)<xdr:to>\2<\/xdr:to>((?:(?!<\/xdr:twoCellAnchor>).)*<a:ext ([^>]*)\/>.*?)<\/xdr:twoCellAnchor>/gs;

/** What the library leaves to do: stored values are kept on opening, stored errors are errors, fonts are in order, and our pictures keep their size whatever cells are under them. */
export function finished(bytes: Uint8Array): Uint8Array {
  const parts = unzipSync(bytes);
  for (const [path, content] of Object.entries(parts)) {
    if (path === "xl/workbook.xml") {
      parts[path] = strToU8(strFromU8(content).replace(/<calcPr[^>]*\/>/, CALCULATION));
    } else if (path === "xl/styles.xml") {
      parts[path] = strToU8(strFromU8(content).replace(/(?<=<font>).*?(?=<\/font>)/gs, fontInOrder));
    } else if (/^xl\/drawings\/drawing\d+\.xml$/.test(path)) {
      parts[path] = strToU8(
        strFromU8(content).replace(SIZED_PICTURE, "<xdr:oneCellAnchor>$1<xdr:ext $4/>$3</xdr:oneCellAnchor>"),
      );
    } else if (/^xl\/worksheets\/sheet\d+\.xml$/.test(path)) {
      parts[path] = strToU8(strFromU8(content).replace(ERROR_AS_TEXT, '$1t="e"$2'));
    }
  }
  return zipSync(parts, { level: 6 });
}

function fontInOrder(font: string): string {
  const place = (part: string) => FONT_PARTS.indexOf(/^<(\w+)/.exec(part)?.[1] ?? "");
  return (font.match(/<[^>]+>/g) ?? []).sort((a, b) => place(a) - place(b)).join("");
}
