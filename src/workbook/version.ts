/** Set by each build from the package file. */
declare const SILLWORK_VERSION: string | undefined;

/** Version of Sillwork, as the files carry it that it writes. */
export const VERSION: string = typeof SILLWORK_VERSION === "string" ? SILLWORK_VERSION : "in development";
