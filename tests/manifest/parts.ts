import type { Element } from "./xml.ts";

/** An element and everything in it. */
export function all(element: Element): Element[] {
  return [element, ...element.children.flatMap(all)];
}

/** The lists of pictures, addresses and texts that others refer to. */
export function resourceLists(app: Element): readonly Element[] {
  return all(app).find(({ name }) => name === "Resources")?.children ?? [];
}

export function textOf(app: Element, name: string): string {
  return app.children.find((child) => child.name === name)?.text ?? "";
}

export function defaultOf(app: Element, name: string): string | undefined {
  return app.children.find((child) => child.name === name)?.attributes.DefaultValue;
}

/** Every address of the add-in that the manifest names. */
export function addresses(app: Element): string[] {
  const named = ["IconUrl", "HighResolutionIconUrl", "SupportUrl"].map((name) => defaultOf(app, name));
  const start = all(app).find(({ name, attributes }) => name === "SourceLocation" && attributes.resid === undefined);
  const domains = all(app)
    .filter(({ name }) => name === "AppDomain")
    .map(({ text }) => text);
  const resources = resourceLists(app)
    .filter(({ name }) => name === "bt:Urls" || name === "bt:Images")
    .flatMap(({ children }) => children.map(({ attributes }) => attributes.DefaultValue));
  return [...named, start?.attributes.DefaultValue, ...domains, ...resources].filter((a) => a !== undefined);
}
