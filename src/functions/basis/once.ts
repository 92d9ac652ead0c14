/** Texts that are remembered by each reader; more are read anew. */
const MOST = 500;
/** A longer text is no name that comes again. */
const LONGEST = 100;

/** A reader of texts that reads each short one once. */
export function onceForEach<T>(read: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    const made = read(text);
    if (known.size < MOST && text.length <= LONGEST) known.set(text, made);
    return made;
  };
}
