import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { OfficeAddinManifest } from "office-addin-manifest";
import { describe, expect, test } from "vitest";
import { buildAssets } from "../../src/publish/assets.ts";
import { filledManifest, manifestVersion, variant } from "../../src/publish/manifest.ts";
import { checkManifest } from "./check.ts";
import { parseXml } from "./xml.ts";

const top = fileURLToPath(new URL("../..", import.meta.url));
const template = readFileSync(`${top}manifest/manifest.template.xml`, "utf8");
const ORIGIN = "https://files.office.example/sillwork";
const common = { version: "0.1.0", manifestTemplate: template, css: "", searchScript: "" };
const builds = {
  production: buildAssets({ ...common, origin: `${ORIGIN}/`, trial: false }),
  trial: buildAssets({ ...common, origin: "https://localhost:3000", trial: true }),
};
const manifestOf = (name: keyof typeof builds) =>
  builds[name].find(({ path }) => path === "manifest.xml")?.content ?? "";

/** Files as the build puts them. */
const files = {
  read(path: string): Uint8Array | undefined {
    try {
      return readFileSync(`${top}manifest/${path}`);
    } catch {
      return undefined;
    }
  },
};
const sound = filledManifest(template, variant("production", ORIGIN, "0.1.0"));

test.each(["production", "trial"] as const)("the %s manifest is sound", (name) => {
  expect(checkManifest(manifestOf(name), files)).toEqual([]);
});

test.each(["production", "trial"] as const)("Office's own tool reads the %s manifest as we mean it", async (name) => {
  const folder = mkdtempSync(join(tmpdir(), "sillwork-"));
  try {
    const file = join(folder, "manifest.xml");
    writeFileSync(file, manifestOf(name));
    const read = await OfficeAddinManifest.readManifestFile(file);
    expect(read).toMatchObject({
      id: parseXml(manifestOf(name)).children.find((child) => child.name === "Id")?.text,
      version: "1.0.1.0",
      providerName: "Sillwork",
      displayName: name === "trial" ? "Sillwork (trial)" : "Sillwork",
      hosts: ["Workbook"],
      permissions: "ReadWriteDocument",
    });
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

test("a build that does not know its address makes no manifest", () => {
  const paths = buildAssets({ ...common, origin: undefined, trial: false }).map(({ path }) => path);
  expect(paths).not.toContain("manifest.xml");
  expect(paths).toContain("functions.json");
});

test("every file that the manifest names is built", () => {
  const content = manifestOf("production");
  // The page and the functions come from the bundler.
  const built = new Set([...builds.production.map(({ path }) => path), "taskpane.html", "functions.js"]);
  for (const [, address = ""] of content.matchAll(/DefaultValue="(https:[^"]+)"/g)) {
    expect(address.startsWith(`${ORIGIN}/`)).toBe(true);
    const path = address.slice(ORIGIN.length + 1);
    expect(built.has(path) || files.read(path) !== undefined, address).toBe(true);
  }
});

test("a trial copy differs in all that would collide with the installed add-in", () => {
  const trial = variant("trial", "https://localhost:3000", "0.1.0");
  const production = variant("production", ORIGIN, "0.1.0");
  for (const key of ["id", "displayName", "namespace", "base", "origin"] as const) {
    expect(trial[key]).not.toBe(production[key]);
  }
  expect(production.namespace).toBe("SILL");
  // The bundle of the trial copy is told the same name.
  expect(readFileSync(`${top}webpack.config.js`, "utf8")).toContain(`"${trial.namespace}"`);
});

test("values are escaped, unknown placeholders and plain http refused", () => {
  const values = { ...variant("trial", ORIGIN, "1.2.3"), displayName: `A&B "x"` };
  expect(filledManifest('<a DefaultValue="{{displayName}}"/>', values)).toBe(
    '<a DefaultValue="A&amp;B &quot;x&quot;"/>',
  );
  expect(() => filledManifest("{{nothing}}", values)).toThrow("{{nothing}}");
  expect(() => variant("trial", "http://localhost:3000", "1.2.3")).toThrow("https");
  expect(manifestVersion("0.12.3")).toBe("1.0.12.3");
  expect(() => manifestVersion("1.2.3-beta")).toThrow("three numbers");
});

describe("the checker finds", () => {
  test.each([
    ["elements out of order", swap("<Version>", "<ProviderName>"), "out of order"],
    ["a missing element", cut("<Permissions>ReadWriteDocument</Permissions>"), "lacks Permissions"],
    ["an element too many", sound.replace("<AppDomains>", "<Extra/><AppDomains>"), "Extra"],
    [
      "a second runtime",
      sound.replace("</Runtimes>", '<Runtime resid="Taskpane.Url" lifetime="long"/></Runtimes>'),
      "Runtime",
    ],
    ["a broken reference", sound.replace('<Label resid="Group.Label"/>', '<Label resid="Nothing"/>'), "no resource"],
    [
      "a reference to another kind",
      sound.replace('<Label resid="Group.Label"/>', '<Label resid="Help.Url"/>'),
      "not in bt:ShortStrings",
    ],
    [
      "a resource that is never used",
      sound.replace('<LearnMoreUrl resid="Help.Url"/>', '<LearnMoreUrl resid="Taskpane.Url"/>'),
      "never used",
    ],
    ["a resource id that stands twice", sound.replaceAll('id="KeepValues.Tip"', 'id="Repair.Tip"'), "stands twice"],
    [
      "a long resource id",
      sound.replaceAll("Functions.Metadata.Url", "Functions.Metadata.Url.Of.All.Languages"),
      "longer than 32",
    ],
    ["a long text", sound.replace("Show the pane", "x".repeat(126)), "longer than 125"],
    ["an empty text", sound.replace("Show the pane", ""), "is empty"],
    ["a bad id", sound.replace(/<Id>.*<\/Id>/, "<Id>sillwork</Id>"), "GUID"],
    ["a version of three parts", sound.replace(/<Version>.*<\/Version>/, "<Version>1.0.0</Version>"), "four parts"],
    ["a version below 1", sound.replace(/<Version>.*<\/Version>/, "<Version>0.1.0.0</Version>"), "below 1.0"],
    [
      "plain http",
      sound.replace(`${ORIGIN}/functions.json`, "http://files.office.example/functions.json"),
      "Not an https",
    ],
    [
      "another origin",
      sound.replace(`${ORIGIN}/functions.json`, "https://other.example/functions.json"),
      "several origins",
    ],
    [
      "another page for the commands",
      sound.replace('<FunctionFile resid="Taskpane.Url"/>', '<FunctionFile resid="Help.Url"/>'),
      "FunctionFile refers",
    ],
    ["a short-lived runtime", sound.replace('lifetime="long"', 'lifetime="short"'), "lifetime"],
    [
      "another start page",
      sound.replace(
        `<SourceLocation DefaultValue="${ORIGIN}/taskpane.html"/>`,
        `<SourceLocation DefaultValue="${ORIGIN}/other.html"/>`,
      ),
      "different pages",
    ],
    ["a missing icon", sound.replace("icons/icon-16.png", "icons/icon-17.png"), "no PNG"],
    ["an icon of another size", sound.replace("icons/icon-16.png", "icons/icon-32.png"), "not 16 x 16"],
    ["an icon without a size", sound.replace('<bt:Image size="80" resid="Icon.80"/>', ""), "lacks the size 80"],
    [
      "an action without its function",
      sound.replace("<FunctionName>keepValuesOnly</FunctionName>", ""),
      "lacks FunctionName",
    ],
    ["XML that is not well formed", sound.replace("</Hosts>", "</Host>"), "cannot be read"],
  ])("%s", (_, broken, sentence) => {
    expect(broken).not.toBe(sound);
    expect(checkManifest(broken, files).join("\n")).toContain(sentence);
  });
});

test.each(["<a>", "<a></b>", "<a/><b/>", "<a x=1/>", '<a x="1" x="2"/>', "<a>&nope;</a>", "text", "", "<a>1 < 2</a>"])(
  "%s is not well formed",
  (text) => {
    expect(() => parseXml(text)).toThrow();
  },
);

test("text and attributes are read", () => {
  expect(parseXml(`<?xml version="1.0"?><!-- c --><a x='1 &amp; 2'> <b/> t&lt; </a>`)).toEqual({
    name: "a",
    attributes: { x: "1 & 2" },
    children: [{ name: "b", attributes: {}, children: [], text: "" }],
    text: "t<",
  });
});

/** The manifest with two neighbouring lines exchanged. */
function swap(first: string, second: string): string {
  const lines = sound.split("\n");
  const a = lines.findIndex((line) => line.includes(first));
  const b = lines.findIndex((line) => line.includes(second));
  [lines[a], lines[b]] = [lines[b] ?? "", lines[a] ?? ""];
  return lines.join("\n");
}

function cut(text: string): string {
  return sound.replace(text, "");
}
