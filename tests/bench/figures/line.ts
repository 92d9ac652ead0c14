/** A row of the table: what was measured, what was found, and whether it meets the goal where there is one. */
export interface Line {
  readonly what: string;
  readonly found: string;
  readonly goal: string;
  readonly met: string;
}

export const line = (what: string, found: string, goal = "", met: boolean | undefined = undefined): Line => ({
  what,
  found,
  goal,
  met: met === undefined ? "" : met ? "yes" : "NO",
});
