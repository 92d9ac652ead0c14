import type { Context } from "./context.ts";

/** An error as Excel gives it: a code for programs, a message for developers. */
export class RichError extends Error {
  readonly code: string;
  constructor(code: string, message = code) {
    super(message);
    this.name = "RichApi.Error";
    this.code = code;
  }
}

/** Members can be read once they were loaded and synced. */
export abstract class Loadable {
  readonly context: Context;
  readonly #loaded = new Map<string, unknown>();
  #isNull: boolean | undefined;

  constructor(context: Context) {
    this.context = context;
    context.waiting.push(() => {
      this.#isNull = this.missing();
    });
  }

  abstract current(member: string): unknown;
  /** whether there is no such thing */
  abstract missing(): boolean;

  get isNullObject(): boolean {
    if (this.#isNull === undefined) throw new RichError("PropertyNotLoaded", "isNullObject was read before sync");
    return this.#isNull;
  }

  load(members: string): void {
    this.context.waiting.push(() => {
      if (this.missing()) return;
      for (const member of members.split(",")) {
        const value = this.current(member);
        if (Array.isArray(value) && Array.isArray(value[0])) this.context.received += JSON.stringify(value).length;
        this.#loaded.set(member, value);
      }
    });
  }

  read(member: string): never {
    if (!this.#loaded.has(member)) throw new RichError("PropertyNotLoaded", `${member} was not loaded and synced`);
    return this.#loaded.get(member) as never;
  }

  /** What a collection's items have loaded comes with them. */
  hold(member: string): this {
    this.#loaded.set(member, this.current(member));
    this.#isNull = false;
    return this;
  }
}
