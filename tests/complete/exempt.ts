export type Rule = "a test" | "a property" | "a published row, or the words for none" | "its words";

/** What a function lacks, with the reason; the test fails on an exemption that is no longer needed. */
export const EXEMPT: readonly { readonly function: string; readonly rule: Rule; readonly why: string }[] = [];
