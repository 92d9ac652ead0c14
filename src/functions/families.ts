import type { CellFunction } from "./declare/cell-function.ts";
import { FAMILY_FOLDERS, type FamilyFolder, functionNames } from "./declare/names.ts";

type Loaders = Readonly<Record<FamilyFolder, () => Promise<readonly CellFunction[]>>>;

const LOADERS: Loaders = {
  units: async () => (await import(/* webpackChunkName: "units" */ "./units/index.ts")).unitFunctions,
  wind: async () => (await import(/* webpackChunkName: "wind" */ "./wind/index.ts")).windFunctions,
  loads: async () => (await import(/* webpackChunkName: "loads" */ "./loads/index.ts")).loadsFunctions,
  wood: async () => (await import(/* webpackChunkName: "wood" */ "./wood/index.ts")).woodFunctions,
  fasteners: async () => (await import(/* webpackChunkName: "fasteners" */ "./fasteners/index.ts")).fastenersFunctions,
  anchorage: async () => (await import(/* webpackChunkName: "anchorage" */ "./anchorage/index.ts")).anchorageFunctions,
  enclosure: async () => (await import(/* webpackChunkName: "enclosure" */ "./enclosure/index.ts")).enclosureFunctions,
  takeoff: async () => (await import(/* webpackChunkName: "takeoff" */ "./takeoff/index.ts")).takeoffFunctions,
  cutting: async () => (await import(/* webpackChunkName: "cutting" */ "./cutting/index.ts")).cuttingFunctions,
  lifting: async () => (await import(/* webpackChunkName: "lifting" */ "./lifting/index.ts")).liftingFunctions,
  labor: async () => (await import(/* webpackChunkName: "labor" */ "./labor/index.ts")).laborFunctions,
  cost: async () => (await import(/* webpackChunkName: "cost" */ "./cost/index.ts")).costFunctions,
};

/** The functions that a page knows by name, and of them those that are loaded. */
export interface FunctionList {
  /** all of them */
  readonly names: readonly string[];
  /** those that can be asked now, in the order of the names */
  readonly loaded: readonly CellFunction[];
  /** whether nothing is left to load */
  readonly whole: boolean;
  /** Loads what is left. Fails where it cannot be fetched, and may be asked again. */
  loadAll(): Promise<void>;
}

/** Functions that are there from the start. */
export function listOf(functions: readonly CellFunction[]): FunctionList {
  return { names: functions.map(({ name }) => name), loaded: functions, whole: true, loadAll: async () => {} };
}

/** The families of one page, each loaded once, when it is first asked for: most workbooks use few. */
export class Families implements FunctionList {
  readonly names = functionNames;
  readonly #loaders: Loaders;
  readonly #loads = new Map<FamilyFolder, Promise<readonly CellFunction[]>>();
  readonly #loaded = new Map<FamilyFolder, readonly CellFunction[]>();

  constructor(loaders: Loaders = LOADERS) {
    this.#loaders = loaders;
  }

  get loaded(): readonly CellFunction[] {
    return FAMILY_FOLDERS.flatMap((family) => this.#loaded.get(family) ?? []);
  }

  get whole(): boolean {
    return this.#loaded.size === FAMILY_FOLDERS.length;
  }

  /** The functions of a family. A load that fails may be asked again. */
  load(family: FamilyFolder): Promise<readonly CellFunction[]> {
    const begun = this.#loads.get(family);
    if (begun !== undefined) return begun;
    const load = this.#loaders[family]().then(
      (functions) => {
        this.#loaded.set(family, functions);
        return functions;
      },
      (error: unknown) => {
        this.#loads.delete(family);
        throw error;
      },
    );
    this.#loads.set(family, load);
    return load;
  }

  async loadAll(): Promise<void> {
    await Promise.all(FAMILY_FOLDERS.map((family) => this.load(family)));
  }
}
