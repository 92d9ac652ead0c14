import { strFromU8, unzipSync } from "fflate";

/**
 * The parts of the published schema of SpreadsheetML (ECMA-376 Part 1, Annex A.2) that our files use: which elements stand in which, in what order, how often, and
 * their attributes with their types. The order in a worksheet is as printed in [MS-OFFMACRO2] 2.2.5.1 (CT_Worksheet); the other rows are from memory, since the
 * schema files themselves are in no package that we may use. What is not in this table is a fault.
 */
interface Element {
  /** children in their order; "?" may be missing, "*" as often as one likes, "+" at least once, none once */
  readonly children?: string;
  /** attributes with their types; "!" must be there */
  readonly attributes?: string;
}

const TYPES: Readonly<Record<string, RegExp>> = {
  bool: /^(?:true|false|0|1)$/,
  uint: /^\d+$/,
  double: /^-?\d+(?:\.\d+)?(?:E-?\d+)?$/,
  ref: /^[A-Z]{1,3}[1-9]\d*(?::[A-Z]{1,3}[1-9]\d*)?$/,
  refs: /^[A-Z]{1,3}[1-9]\d*(?::[A-Z]{1,3}[1-9]\d*)?(?: [A-Z]{1,3}[1-9]\d*(?::[A-Z]{1,3}[1-9]\d*)?)*$/,
  cellType: /^(?:b|d|n|e|s|str|inlineStr)$/,
  formulaType: /^(?:normal|array|dataTable|shared)$/,
  rgb: /^[0-9A-F]{8}$/,
  pane: /^(?:bottomRight|topRight|bottomLeft|topLeft)$/,
  paneState: /^(?:split|frozen|frozenSplit)$/,
  orientation: /^(?:default|portrait|landscape)$/,
  horizontal: /^(?:general|left|center|right|fill|justify|centerContinuous|distributed)$/,
  vertical: /^(?:top|center|bottom|justify|distributed)$/,
  pattern: /^(?:none|solid|gray125)$/,
  validation: /^(?:none|whole|decimal|list|date|time|textLength|custom)$/,
  validationError: /^(?:stop|warning|information)$/,
  operator: /^(?:between|notBetween|equal|notEqual|lessThan|lessThanOrEqual|greaterThan|greaterThanOrEqual)$/,
  text: /^[\s\S]*$/,
  sheetName: /^[^\\/*?:[\]]{1,31}$/,
  name: /^[A-Za-z_\\][\w.\\]{0,254}$/,
  says: /^[\s\S]{0,255}$/,
  rid: /^rId\d+$/,
};

const xf = "numFmtId:uint fontId:uint fillId:uint borderId:uint xfId:uint";
const applied = "applyNumberFormat:bool applyFont:bool applyFill:bool applyBorder:bool applyAlignment:bool";

/** By the path of an element's last names, longest first, so that one name may mean two things. */
const ELEMENTS: Readonly<Record<string, Element>> = {
  worksheet: {
    children:
      "sheetPr? dimension? sheetViews? sheetFormatPr? cols* sheetData sheetCalcPr? sheetProtection? protectedRanges? scenarios? autoFilter? sortState? dataConsolidate? customSheetViews? mergeCells? phoneticPr? conditionalFormatting* dataValidations? hyperlinks? printOptions? pageMargins? pageSetup? headerFooter? rowBreaks? colBreaks? customProperties? cellWatches? ignoredErrors? smartTags? drawing? legacyDrawing? tableParts? extLst?",
  },
  sheetPr: { children: "tabColor? outlinePr? pageSetUpPr?" },
  pageSetUpPr: { attributes: "autoPageBreaks:bool fitToPage:bool" },
  dimension: { attributes: "ref!:ref" },
  sheetViews: { children: "sheetView+" },
  sheetView: { children: "pane? selection*", attributes: "workbookViewId!:uint tabSelected:bool showGridLines:bool" },
  pane: { attributes: "xSplit:double ySplit:double topLeftCell:ref activePane:pane state:paneState" },
  selection: { attributes: "pane:pane activeCell:ref sqref:refs" },
  sheetFormatPr: { attributes: "defaultRowHeight!:double baseColWidth:uint defaultColWidth:double" },
  cols: { children: "col+" },
  col: { attributes: "min!:uint max!:uint width:double style:uint hidden:bool customWidth:bool" },
  sheetData: { children: "row*" },
  row: {
    children: "c*",
    attributes: "r:uint spans:text s:uint customFormat:bool ht:double hidden:bool customHeight:bool",
  },
  c: { children: "f? v? is?", attributes: "r:ref s:uint t:cellType cm:uint vm:uint" },
  f: { attributes: "t:formulaType ref:ref aca:bool si:uint" },
  v: {},
  dataValidations: { children: "dataValidation+", attributes: "count:uint" },
  dataValidation: {
    children: "formula1? formula2?",
    attributes:
      "type:validation errorStyle:validationError operator:operator allowBlank:bool showDropDown:bool showInputMessage:bool showErrorMessage:bool errorTitle:says error:says promptTitle:says prompt:says sqref!:refs",
  },
  formula1: {},
  formula2: {},
  pageMargins: { attributes: "left!:double right!:double top!:double bottom!:double header!:double footer!:double" },
  pageSetup: { attributes: "paperSize:uint scale:uint fitToWidth:uint fitToHeight:uint orientation:orientation" },
  headerFooter: { children: "oddHeader? oddFooter?" },
  oddHeader: {},
  oddFooter: {},
  workbook: {
    children:
      "fileVersion? fileSharing? workbookPr? workbookProtection? bookViews? sheets functionGroups? externalReferences? definedNames? calcPr? oleSize? customWorkbookViews? pivotCaches? extLst?",
  },
  workbookPr: { attributes: "date1904:bool defaultThemeVersion:uint" },
  bookViews: { children: "workbookView+" },
  workbookView: {
    attributes: "xWindow:uint yWindow:uint windowWidth:uint windowHeight:uint activeTab:uint firstSheet:uint",
  },
  sheets: { children: "sheet+" },
  sheet: { attributes: "name!:sheetName sheetId!:uint r:id!:rid state:text" },
  definedNames: { children: "definedName+" },
  definedName: { attributes: "name!:name localSheetId:uint hidden:bool comment:text" },
  calcPr: { attributes: "calcId:uint fullCalcOnLoad:bool" },
  sst: { children: "si*", attributes: "count:uint uniqueCount:uint" },
  si: { children: "t? r*" },
  t: { attributes: "xml:space:text" },
  styleSheet: {
    children: "numFmts? fonts? fills? borders? cellStyleXfs? cellXfs? cellStyles? dxfs? tableStyles? colors? extLst?",
  },
  numFmts: { children: "numFmt+", attributes: "count:uint" },
  numFmt: { attributes: "numFmtId!:uint formatCode!:text" },
  fonts: { children: "font+", attributes: "count:uint" },
  // The children of a font may stand in any order.
  font: { children: "b? i? strike? color? sz? u? name? family? scheme?" },
  b: { attributes: "val:bool" },
  i: { attributes: "val:bool" },
  color: { attributes: "rgb:rgb theme:uint" },
  sz: { attributes: "val!:double" },
  name: { attributes: "val!:text" },
  family: { attributes: "val!:uint" },
  scheme: { attributes: "val!:text" },
  fills: { children: "fill+", attributes: "count:uint" },
  fill: { children: "patternFill" },
  patternFill: { children: "fgColor? bgColor?", attributes: "patternType:pattern" },
  fgColor: { attributes: "rgb:rgb theme:uint" },
  bgColor: { attributes: "rgb:rgb indexed:uint" },
  borders: { children: "border+", attributes: "count:uint" },
  border: { children: "left? right? top? bottom? diagonal?" },
  left: {},
  right: {},
  top: {},
  bottom: {},
  diagonal: {},
  cellStyleXfs: { children: "xf+", attributes: "count:uint" },
  cellXfs: { children: "xf+", attributes: "count:uint" },
  xf: { children: "alignment? protection?", attributes: `${xf} ${applied}` },
  alignment: { attributes: "horizontal:horizontal vertical:vertical wrapText:bool" },
  protection: { attributes: "locked:bool hidden:bool" },
  cellStyles: { children: "cellStyle+", attributes: "count:uint" },
  cellStyle: { attributes: "name:text xfId!:uint builtinId:uint" },
  dxfs: { attributes: "count:uint" },
  tableStyles: { attributes: "count:uint defaultTableStyle:text defaultPivotStyle:text" },
};

const PARTS = /^xl\/(?:workbook|styles|sharedStrings|worksheets\/sheet\d+)\.xml$/;

/** What of a written file does not follow the schema, as "part: what is wrong". */
export function schemaFaults(bytes: Uint8Array): string[] {
  const parts = Object.entries(unzipSync(bytes)).filter(([path]) => PARTS.test(path));
  if (parts.length < 4) return [`the file has only ${parts.length} of the parts that are looked at`];
  return parts.flatMap(([path, content]) => faultsIn(strFromU8(content)).map((fault) => `${path}: ${fault}`));
}

interface Open {
  readonly name: string;
  readonly children: string[];
}

function faultsIn(xml: string): string[] {
  const faults = new Set<string>();
  const open: Open[] = [{ name: "", children: [] }];
  for (const [, closes, name = "", attributes = "", single] of xml.matchAll(
    /<(\/?)([\w:]+)((?:\s+[\w:]+="[^"]*")*)\s*(\/?)>/g,
  )) {
    if (closes === "/") {
      const ended = open.pop();
      if (ended?.name !== name) return [`<${ended?.name}> is closed by </${name}>`];
      for (const fault of orderFaults(ended)) faults.add(fault);
      continue;
    }
    open.at(-1)?.children.push(name);
    for (const fault of attributeFaults(name, attributes)) faults.add(fault);
    if (single === "/") for (const fault of orderFaults({ name, children: [] })) faults.add(fault);
    else open.push({ name, children: [] });
  }
  if (open.length !== 1) faults.add(`${open.length - 1} elements are not closed`);
  return [...faults];
}

function orderFaults({ name, children }: Open): string[] {
  const element = ELEMENTS[name];
  if (element === undefined) return [`<${name}> is not in the schema's part that we use`];
  const order = (element.children ?? "").split(" ").filter((word) => word !== "");
  // Names followed by a comma, against the order as a pattern.
  const pattern = order.map((word) => `(?:${word.replace(/[?*+]$/, "")},)${/[?*+]$/.exec(word)?.[0] ?? ""}`).join("");
  const given = children.map((child) => `${child},`).join("");
  return new RegExp(`^${pattern}$`).test(given)
    ? []
    : [`<${name}> holds ${[...new Set(children)].join(", ") || "nothing"}`];
}

function attributeFaults(name: string, text: string): string[] {
  const known = new Map(
    (ELEMENTS[name]?.attributes ?? "").split(" ").flatMap((word): [string, { type: string; must: boolean }][] => {
      const [, key = "", must, type = ""] = /^(.+?)(!?):(\w+)$/.exec(word) ?? [];
      return key === "" ? [] : [[key, { type, must: must === "!" }]];
    }),
  );
  const given = new Map([...text.matchAll(/([\w:]+)="([^"]*)"/g)].map(([, key = "", value = ""]) => [key, value]));
  const wrong = [...given].flatMap(([key, value]) => {
    if (key.startsWith("xmlns")) return [];
    const rule = known.get(key);
    if (rule === undefined) return [`<${name}> has no attribute ${key}`];
    return TYPES[rule.type]?.test(unescaped(value)) === true ? [] : [`<${name} ${key}="${value}"> is no ${rule.type}`];
  });
  const missing = [...known].filter(([key, { must }]) => must && !given.has(key));
  return [...wrong, ...missing.map(([key]) => `<${name}> lacks ${key}`)];
}

function unescaped(text: string): string {
  return text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");
}
