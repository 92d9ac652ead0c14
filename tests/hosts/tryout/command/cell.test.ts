import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const command = fileURLToPath(new URL("../../../../src/hosts/tryout/command/cell.mjs", import.meta.url));

function cell(args: readonly string[], input = ""): { status: number | null; lines: unknown[]; stderr: string } {
  const { status, stdout, stderr } = spawnSync(process.execPath, [command, ...args], { encoding: "utf8", input });
  return {
    status,
    lines: stdout
      .split("\n")
      .filter((line) => line !== "")
      .map((line) => JSON.parse(line)),
    stderr,
  };
}

describe("npm run cell", () => {
  test("a number, a table and a text", () => {
    const formulas = '# lengths\n\n=SILL.LENGTH("12\'-6 1/2""")\nSILL.FTIN(3)\n=SEQUENCE(2,2)\n=1=1\n=A1\n';
    const { status, lines, stderr } = cell(["--file", "-"], formulas);
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(lines).toEqual([
      12.541666666666666,
      "3'-0\"",
      [
        [1, 2],
        [3, 4],
      ],
      true,
      "",
    ]);
  });

  test("one formula, with its working", () => {
    const { status, lines } = cell(["--working", '=2*SILL.LENGTH("3 ft")']);
    expect(status).toBe(0);
    expect(lines).toMatchObject([
      {
        result: 6,
        calls: [{ function: "SILL.LENGTH", value: 3, arguments: [{ shown: "3 ft" }, { omitted: true }], cautions: [] }],
      },
    ]);
  });

  test("errors carry a sentence each, and the command fails", () => {
    const formulas = ['=SILL.LENGTH("x")', "=SILL.NOPE(1)", "=nobody", "=1/0", "=1+", '=VLOOKUP("a",{"b",1},2,FALSE)'];
    const { status, lines } = cell(["--file", "-"], formulas.join("\n"));
    expect(status).toBe(1);
    expect(lines).toEqual([
      { error: "#VALUE!", says: expect.stringContaining('"x" is not a length') },
      { error: "#NAME?", says: expect.stringContaining("SILL.NOPE is not known") },
      { error: "#NAME?", says: expect.stringContaining("name in the formula is not known") },
      { error: "#DIV/0!", says: expect.stringContaining("divides by zero") },
      { error: "#ERROR!", says: expect.stringContaining("cannot be read") },
      { error: "#N/A", says: expect.stringContaining("found no value") },
    ]);
  });

  test("a text of cases is counted, and fails with the line of each that does not hold", () => {
    const check = (text: string) =>
      spawnSync(process.execPath, [command, "--check", "-"], { encoding: "utf8", input: text });
    const cases =
      'Prose.\n=SILL.DEW_POINT(70, 150)\nexpect refusal "at most 100 %"\n=SILL.DEW_POINT(70, 50)\nexpect 50.5 F\n';
    expect(check(cases)).toMatchObject({ status: 0, stdout: "2 hold, 0 fail\n" });
    const wrong = check(`${cases}expect 51 F within 0.05\n`);
    expect(wrong.status).toBe(1);
    expect(wrong.stdout).toMatch(/^line 6: it gives 50\.\d+ F, off by 0\.\d+\n2 hold, 1 fail\n$/);
    expect(check("Nothing but prose.\n").status).toBe(1);
  });

  test("without a formula it says how it is used, on standard error", () => {
    const { status, lines, stderr } = cell([]);
    expect(status).toBe(2);
    expect(lines).toEqual([]);
    expect(stderr).toContain("Usage:");
  });
});
