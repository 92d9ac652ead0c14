import validate from "@ooxml-tools/validate";

/**
 * What of a written file does not follow the published schemas of ISO/IEC 29500 and the rules that Excel adds to them, as "part: what is wrong". The schemas stand
 * in the Open XML SDK inside the package (both MIT), which runs on every machine and asks nothing of the network; of its editions the newest, which knows the
 * parts for formulas that spill.
 */
export async function schemaFaults(bytes: Uint8Array): Promise<string[]> {
  try {
    const faults = await validate(bytes, "xlsx", "Microsoft365");
    return faults.map(({ description, path }) => `${path.partUri} ${path.xpath}: ${description}`);
  } catch (opening) {
    return [String(opening)];
  }
}
