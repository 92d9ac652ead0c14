import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";

const src = fileURLToPath(new URL("../src", import.meta.url));

/** What each part may import from: core <- functions <- workbook <- templates <- publish, pane, hosts. */
const MAY: Readonly<Record<string, readonly string[]>> = {
  core: ["core"],
  functions: ["functions", "core"],
  workbook: ["workbook", "functions", "core"],
  templates: ["templates", "workbook", "functions", "core"],
  publish: ["publish", "templates", "workbook", "functions", "core"],
  pane: ["pane", "templates", "workbook", "functions", "core"],
  hosts: ["hosts", "pane", "publish", "templates", "workbook", "functions", "core"],
};

function files(folder: string): string[] {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) return files(path);
    return entry.name.endsWith(".ts") && !entry.name.endsWith(".d.ts") ? [path] : [];
  });
}

function imports(file: string): string[] {
  const text = readFileSync(file, "utf8");
  return [...text.matchAll(/(?:from\s+|import\s*\(?\s*)["']([^"']+)["']/g)].map((match) => match[1] as string);
}

test.each(files(src).map((file) => relative(src, file).replaceAll("\\", "/")))(
  "%s imports along the arrows",
  (file) => {
    const part = file.split("/")[0] as string;
    const allowed = MAY[part];
    expect(allowed, `no rule for src/${part}`).toBeDefined();
    for (const target of imports(join(src, file))) {
      if (!target.startsWith(".")) {
        expect(part, "core imports no library").not.toBe("core");
        expect(target.startsWith("node:") && part !== "hosts" && part !== "publish", `${file} imports ${target}`).toBe(
          false,
        );
        continue;
      }
      const to = relative(src, resolve(dirname(join(src, file)), target)).replaceAll("\\", "/");
      const good = allowed?.some((start) => to === start || to.startsWith(`${start}/`));
      expect(good, `${file} imports ${to}`).toBe(true);
    }
  },
);

test("the two hosts know nothing of each other", () => {
  for (const file of files(join(src, "hosts"))) {
    const here = relative(src, file).replaceAll("\\", "/");
    const other = here.startsWith("hosts/excel/")
      ? "/tryout/"
      : here.startsWith("hosts/tryout/")
        ? "/excel/"
        : undefined;
    if (other === undefined) continue;
    for (const target of imports(file)) expect(target).not.toContain(other);
  }
});
