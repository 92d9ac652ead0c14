/** What was released last: its version and the signature of each function, by name. */
export interface Released {
  readonly version: string;
  readonly signatures: Readonly<Record<string, string>>;
}

type Raise = "major" | "minor" | "patch";

/** Differences between two sets of signatures, by the functions' names. */
interface SignatureChanges {
  readonly gone: readonly string[];
  readonly changed: readonly string[];
  readonly added: readonly string[];
}

export function signatureChanges(before: Released["signatures"], now: Released["signatures"]): SignatureChanges {
  const names = Object.keys(before);
  return {
    gone: names.filter((name) => !Object.hasOwn(now, name)),
    changed: names.filter((name) => Object.hasOwn(now, name) && now[name] !== before[name]),
    added: Object.keys(now).filter((name) => !Object.hasOwn(before, name)),
  };
}

/** The next version: "patch", "minor", "major", or a version of three numbers. */
export function raised(from: string, asked: string): string {
  const [major = 0, minor = 0, patch = 0] = numbers(from);
  const steps: Readonly<Record<string, string>> = {
    major: `${major + 1}.0.0`,
    minor: `${major}.${minor + 1}.0`,
    patch: `${major}.${minor}.${patch + 1}`,
  };
  const version = steps[asked] ?? asked;
  numbers(version);
  return version;
}

/**
 * Why a release may not be made, or undefined where it may. Office keeps the list of functions of a version, and reads it again only for a higher one; so a
 * changed signature asks for a raised version: at least the second number, and the first where a workbook's formulas stop working, from 1.0.0 on.
 */
export function refusal(last: Released, now: Released["signatures"], version: string): string | undefined {
  if (compared(version, last.version) <= 0) {
    return `The version ${version} is not above ${last.version}, which was released last.`;
  }
  const { gone, changed, added } = signatureChanges(last.signatures, now);
  const step = stepOf(last.version, version);
  const parts = [listed("gone", gone), listed("changed", changed), listed("new", added)].filter((part) => part !== "");
  if (parts.length === 0) return undefined;
  const least = gone.length > 0 && numbers(last.version)[0] !== 0 ? "major" : "minor";
  if (ORDER.indexOf(step) <= ORDER.indexOf(least)) return undefined;
  return `Signatures differ from those of ${last.version}: ${parts.join("; ")}. ${version} raises the ${step} number only: release a ${least} version, npm run release -- ${least}.`;
}

const ORDER: readonly Raise[] = ["major", "minor", "patch"];
/** How many names a sentence lists. */
const LISTED = 8;

function listed(what: string, names: readonly string[]): string {
  if (names.length === 0) return "";
  const more = names.length > LISTED ? ` and ${names.length - LISTED} more` : "";
  return `${what} ${names.slice(0, LISTED).join(", ")}${more}`;
}

function numbers(version: string): number[] {
  const match = /^(\d+)\.(\d+)\.(\d+)$/.exec(version);
  if (match === null)
    throw new Error(`A version is patch, minor, major or three numbers such as 1.4.0, but not ${version}.`);
  return match.slice(1).map(Number);
}

function compared(a: string, b: string): number {
  const [left, right] = [numbers(a), numbers(b)];
  const at = left.findIndex((part, i) => part !== right[i]);
  return at < 0 ? 0 : (left[at] ?? 0) - (right[at] ?? 0);
}

function stepOf(from: string, to: string): Raise {
  const [before, after] = [numbers(from), numbers(to)];
  return ORDER[before.findIndex((part, i) => part !== after[i])] ?? "patch";
}
