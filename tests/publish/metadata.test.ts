import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Ajv, type ValidateFunction } from "ajv";
import { describe, expect, test } from "vitest";
import { cellFunction, NAMESPACE, quantityOf } from "../../src/functions/declare/cell-function.ts";
import { number } from "../../src/functions/declare/scalar.ts";
import { choice } from "../../src/functions/declare/word.ts";
import { registry } from "../../src/functions/registry.ts";
import { excelMetadata } from "../../src/publish/metadata.ts";
import { MACRO_NAMES } from "./macro-names.ts";

const BASE = "https://files.office.example/sillwork";
const metadata = excelMetadata(registry, BASE);

interface Schema {
  readonly definitions: Readonly<Record<string, object>>;
}

/** The limits that Microsoft publishes in machine-readable form: the schema of the unified manifest, written for draft 4. */
function validator(): ValidateFunction {
  const path = createRequire(import.meta.url).resolve(
    "@microsoft/app-manifest/build/json-schemas/teams/v1.30/MicrosoftTeams.schema.json",
  );
  const { definitions } = JSON.parse(readFileSync(path, "utf8")) as Schema;
  const ajv = new Ajv({ strict: false, allErrors: true });
  ajv.addSchema({ $id: "manifest", definitions });
  return ajv.compile({ $ref: "manifest#/definitions/extensionCustomFunctions" });
}

/** The same content as the unified manifest writes it: options beside the id, a namespace, and no file-wide error flag. */
function asManifestPart(): unknown {
  const { allowErrorForDataTypeAny: _, functions, enums } = metadata;
  return {
    namespace: { id: NAMESPACE, name: NAMESPACE },
    functions: functions.map(({ options, ...fn }) => ({ ...fn, ...options })),
    enums,
  };
}

describe("functions.json", () => {
  test("keeps to the published schema", () => {
    const validate = validator();
    validate(asManifestPart());
    expect(validate.errors ?? []).toEqual([]);
  });

  test("a schema breach would be seen", () => {
    const validate = validator();
    const part = asManifestPart() as { functions: { id: string }[] };
    expect(validate({ ...part, functions: [{ ...part.functions[0], id: "A" }] })).toBe(false);
    expect(validate({ ...part, functions: [{ ...part.functions[0], helpUrl: "http://x" }] })).toBe(false);
  });

  test("lets functions see errors", () => {
    expect(metadata.allowErrorForDataTypeAny).toBe(true);
  });

  test("has every function once", () => {
    expect(metadata.functions).toHaveLength(registry.length);
    for (const key of ["id", "name", "helpUrl"] as const) {
      expect(new Set(metadata.functions.map((fn) => fn[key].toUpperCase())).size, key).toBe(registry.length);
    }
    expect(new Set(metadata.enums.map((e) => e.id)).size).toBe(metadata.enums.length);
  });

  test("every enum is used and every reference resolves", () => {
    const used = metadata.functions.flatMap((fn) => fn.parameters.flatMap((p) => p.customEnumId ?? []));
    expect(new Set(used)).toEqual(new Set(metadata.enums.map((e) => e.id)));
  });
});

describe.each(metadata.functions.map((fn) => [fn.name, fn] as const))("%s", (_, fn) => {
  test("id and name are ones that Excel takes", () => {
    expect(fn.id).toMatch(/^[A-Z][A-Z0-9]{2,63}$/);
    expect(fn.name).toMatch(/^[A-Z][A-Z0-9_]{2,63}$/);
    for (const name of [fn.id, fn.name]) {
      expect(isCellAddress(name), `${name} reads as a cell`).toBe(false);
      expect(MACRO_NAMES.has(name), `${name} is a macro function`).toBe(false);
    }
  });

  test("asks for its address, shows units first and keeps optional arguments last", () => {
    expect(fn.options).toEqual({ requiresAddress: true });
    const declared = registry.find(({ id }) => id === fn.id);
    fn.parameters.forEach((p, i) => {
      const param = declared?.params[i]?.param;
      if (param?.unit) expect(p.description.startsWith(`[${param.unit}] `), p.name).toBe(true);
      const whole = param?.kind === "table" || param?.kind === "list" || (declared?.takesBasis === true && p.optional);
      expect(p.dimensionality, p.name).toBe(whole ? "matrix" : "scalar");
      expect(p.type).toBe(p.customEnumId === undefined ? "any" : "string");
      // A required argument after an optional one could never be given without it.
      if (i > 0 && !p.optional) expect(fn.parameters[i - 1]?.optional, p.name).toBe(false);
    });
  });

  test("a table result is declared as one", () => {
    const declared = registry.find(({ id }) => id === fn.id);
    const kind = declared?.returns.kind;
    const length = declared?.takesBasis === true && ["ft", "in"].includes(declared.returns.unit);
    expect(fn.result.dimensionality).toBe(kind === "table" ? "matrix" : "scalar");
    expect(fn.result.type).toBe(kind === "number" && !length ? "number" : "any");
  });
});

test("descriptions that are too long lose whole parts, never the unit", () => {
  const long = cellFunction({
    name: "LONG_ONE",
    family: "Wind",
    summary: "word ".repeat(300),
    params: {
      speed: { ...number({ says: "speed ".repeat(80), min: 0, max: 5, source: "a rule" }), unit: "mph" },
      other: { ...number({ says: "x".repeat(50) }), unit: "ft" },
      pick: choice(["a", "b"], { says: "a choice", means: { a: "first", b: "y".repeat(400) } }),
    },
    returns: quantityOf("", "nothing"),
    sources: ["none"],
    example: { args: { speed: 1, other: 1, pick: "a" }, gives: 1, within: 0, source: "exact arithmetic" },
    refuses: [{ args: {}, says: "" }],
    notFor: "none, because it is for tests.",
    run: () => 1,
  });
  const made = excelMetadata([long], BASE);
  const [fn] = made.functions;
  expect(fn?.description.length).toBeLessThanOrEqual(1024);
  expect(fn?.parameters[0]?.description).toMatch(/^\[mph\] speed/);
  expect(fn?.parameters[0]?.description.length).toBeLessThanOrEqual(512);
  expect(made.enums[0]?.values[1]?.tooltip?.length).toBeLessThanOrEqual(256);
});

function isCellAddress(name: string): boolean {
  const [, letters = "", row = ""] = /^([A-Z]{1,3})(\d{1,7})$/.exec(name) ?? [];
  if (letters !== "" && (letters.length < 3 || letters <= "XFD") && Number(row) <= 1_048_576) return true;
  return /^R\d*(C\d*)?$|^C\d*$/.test(name);
}
