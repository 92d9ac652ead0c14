/** The page of a family: "Wood members" -> wood-members.html */
export function pageOfFamily(family: string): string {
  return `${family.toLowerCase().replace(/[^a-z0-9]+/g, "-")}.html`;
}

/** The page that holds a function; the function has an anchor of its name there. */
export function pageOf(fn: { readonly family: string }): string {
  return pageOfFamily(fn.family);
}
