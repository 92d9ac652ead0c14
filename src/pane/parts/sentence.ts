/** A refusal taken apart again: what is wrong, why, what to do. */
export interface SaidError {
  readonly what: string;
  readonly why: string;
  readonly todo: string;
}

/**
 * Takes apart "What: why. What to do." The last stop ends the reason, the last colon before it ends the fact; both only outside quotes and brackets.
 * No word is lost when a sentence has another form.
 */
export function sayError(sentence: string): SaidError {
  const text = sentence.trim();
  const open = outside(text);
  let stop = -1;
  for (let i = 0; i < text.length - 2; i++) {
    if (text[i] === "." && text[i + 1] === " " && open[i] && /[A-Z]/.test(text[i + 2] ?? "")) stop = i;
  }
  const head = stop < 0 ? text : text.slice(0, stop);
  let colon = -1;
  for (let i = 0; i < head.length - 1; i++) if (head[i] === ":" && head[i + 1] === " " && open[i]) colon = i;
  return {
    what: sentenceOf(colon < 0 ? head : head.slice(0, colon)),
    why: colon < 0 ? "" : sentenceOf(head.slice(colon + 2)),
    todo: stop < 0 ? "" : text.slice(stop + 2),
  };
}

function sentenceOf(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return /[.!?]$/.test(capital) ? capital : `${capital}.`;
}

/** For each character whether it stands outside double quotes and round brackets. A lone quote is an inch mark, not a quotation. */
function outside(text: string): boolean[] {
  const quotes = (text.match(/"/g)?.length ?? 0) % 2 === 0;
  let quoted = false;
  let depth = 0;
  return [...text.split("")].map((c) => {
    if (c === '"' && quotes) quoted = !quoted;
    else if (c === "(" && !quoted) depth++;
    else if (c === ")" && !quoted && depth > 0) depth--;
    return !quoted && depth === 0;
  });
}
