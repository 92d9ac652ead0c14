import packageFile from "../../../../package.json" with { type: "json" };

/** Version of Sillwork, as files carry it. */
export const VERSION: string = packageFile.version;
