import { expect, test } from "vitest";
import { GLOSSARY } from "../../src/functions/basis/glossary/index.ts";
import { isTerm } from "../../src/functions/declare/param.ts";
import { registry } from "../../src/functions/registry.ts";

test("each term is taken by a function, and each taken term stands in the glossary", () => {
  const taken = new Set(
    registry.flatMap((fn) =>
      [...fn.params, ...fn.named].flatMap(({ param }) =>
        isTerm(param) ? [param.term, param.fallback ?? param.term] : [],
      ),
    ),
  );
  const sheet = new Set(["headings", "lengths"]);
  expect(Object.keys(GLOSSARY).filter((term) => !taken.has(term) && !sheet.has(term))).toEqual([]);
  expect([...taken].filter((term) => !Object.hasOwn(GLOSSARY, term))).toEqual([]);
});
