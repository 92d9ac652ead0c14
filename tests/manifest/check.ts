import { checkIcons, type ManifestFiles } from "./check-icons.ts";
import { LONGEST, ORDER, WANTS } from "./order.ts";
import { addresses, all, resourceLists, textOf } from "./parts.ts";
import { type Element, parseXml } from "./xml.ts";

/** Longest resource id. */
const LONGEST_RESID = 32;
const GUID = /^[0-9a-f]{8}-[0-9a-f]{4}-[1-5][0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/i;

/**
 * Checks an add-in manifest for what no tool finds without a network.
 * @returns a sentence for each fault; none when the manifest is sound
 */
export function checkManifest(xml: string, files: ManifestFiles): string[] {
  let app: Element;
  try {
    app = parseXml(xml);
  } catch (error) {
    return [`The manifest cannot be read: ${error instanceof Error ? error.message : error}`];
  }
  return [
    ...checkOrder(app, []),
    ...checkIdentity(app),
    ...checkTexts(app),
    ...checkResources(app),
    ...checkRuntime(app),
    ...checkAddresses(app),
    ...checkIcons(app, files),
  ];
}

function checkOrder(element: Element, above: readonly string[]): string[] {
  const path = [...above, element.name];
  const rule = [3, 2, 1].map((n) => ORDER[path.slice(-n).join("/")]).find((found) => found !== undefined) ?? [];
  const faults: string[] = [];
  let at = 0;
  for (const entry of rule) {
    const name = entry.replace(/[?*]$/, "");
    const start = at;
    while (element.children[at]?.name === name && (at === start || entry.endsWith("*"))) at++;
    if (at === start && !entry.endsWith("?")) faults.push(`${path.join(" > ")} lacks ${name}, or has it out of order`);
  }
  for (const extra of element.children.slice(at)) {
    faults.push(`${path.join(" > ")} has ${extra.name} out of order, once too often, or where it does not belong`);
  }
  return [...faults, ...element.children.flatMap((child) => checkOrder(child, path))];
}

function checkIdentity(app: Element): string[] {
  const faults: string[] = [];
  if (!GUID.test(textOf(app, "Id"))) faults.push(`Id is not a GUID: ${textOf(app, "Id")}`);
  const version = textOf(app, "Version");
  if (!/^\d{1,5}\.\d{1,5}\.\d{1,5}\.\d{1,5}$/.test(version)) faults.push(`Version has not four parts: ${version}`);
  else if (version.startsWith("0.")) faults.push(`Version is below 1.0: ${version}`);
  return faults;
}

function checkTexts(app: Element): string[] {
  const faults: string[] = [];
  for (const name of ["DisplayName", "Description", "ProviderName"]) {
    const element = app.children.find((child) => child.name === name);
    const text = element?.attributes.DefaultValue ?? element?.text ?? "";
    if (text === "") faults.push(`${name} is empty`);
    if (text.length > (LONGEST[name] ?? 0)) faults.push(`${name} is longer than ${LONGEST[name]} characters`);
  }
  for (const { name, children } of resourceLists(app)) {
    for (const { attributes } of children) {
      const value = attributes.DefaultValue ?? "";
      if (value === "") faults.push(`Resource ${attributes.id} is empty`);
      if (value.length > (LONGEST[name] ?? 0)) {
        faults.push(`Resource ${attributes.id} is longer than ${LONGEST[name]} characters`);
      }
    }
  }
  return faults;
}

/** Ids are short and unique, every reference finds a resource of its kind, every resource is used. */
function checkResources(app: Element): string[] {
  const faults: string[] = [];
  const kindOf = new Map<string, string>();
  for (const list of resourceLists(app)) {
    for (const { attributes } of list.children) {
      const id = attributes.id ?? "";
      if (kindOf.has(id)) faults.push(`Resource id ${id} stands twice`);
      if (id.length > LONGEST_RESID) faults.push(`Resource id ${id} is longer than ${LONGEST_RESID} characters`);
      kindOf.set(id, list.name);
    }
  }
  const used = new Set<string>();
  for (const { name, attributes } of all(app)) {
    const { resid } = attributes;
    if (resid === undefined) continue;
    used.add(resid);
    const kind = kindOf.get(resid);
    if (kind === undefined) faults.push(`${name} refers to ${resid}, which is no resource`);
    else if (kind !== WANTS[name])
      faults.push(`${name} refers to ${resid}, which is in ${kind}, not in ${WANTS[name]}`);
  }
  for (const id of kindOf.keys()) if (!used.has(id)) faults.push(`Resource ${id} is never used`);
  return faults;
}

/** One shared runtime: the same page, by the same id, for functions, pane and commands; else Excel loads none of them. */
function checkRuntime(app: Element): string[] {
  const faults: string[] = [];
  const runtime = all(app).find(({ name }) => name === "Runtime");
  if (runtime?.attributes.lifetime !== "long") faults.push("The runtime's lifetime is not long");
  const page = runtime?.attributes.resid;
  const same = [
    ...all(app).filter(({ name }) => name === "FunctionFile"),
    ...all(app)
      .filter(({ name, attributes }) => name === "Page" || attributes["xsi:type"] === "ShowTaskpane")
      .flatMap(({ children }) => children.filter(({ name }) => name === "SourceLocation")),
  ];
  for (const { name, attributes } of same) {
    if (attributes.resid !== page) faults.push(`${name} refers to ${attributes.resid}, the runtime to ${page}`);
  }
  const address = resourceLists(app)
    .flatMap((list) => list.children)
    .find(({ attributes }) => attributes.id === page);
  const start = all(app).find(({ name, attributes }) => name === "SourceLocation" && attributes.resid === undefined);
  if (start?.attributes.DefaultValue !== address?.attributes.DefaultValue) {
    faults.push("DefaultSettings and the runtime have different pages");
  }
  for (const { attributes, children } of all(app).filter(({ name }) => name === "Action")) {
    const wanted = attributes["xsi:type"] === "ExecuteFunction" ? "FunctionName" : "SourceLocation";
    if (children[0]?.name !== wanted) faults.push(`An action of type ${attributes["xsi:type"]} lacks ${wanted}`);
  }
  return faults;
}

/** Everything over https, from one origin. */
function checkAddresses(app: Element): string[] {
  const faults: string[] = [];
  const origins = new Set<string>();
  for (const address of addresses(app)) {
    if (!/^https:\/\/[^\s]+$/.test(address) || !URL.canParse(address)) {
      faults.push(`Not an https address: ${address}`);
    } else origins.add(new URL(address).origin);
  }
  if (origins.size > 1) faults.push(`Addresses have several origins: ${[...origins].join(", ")}`);
  return faults;
}
