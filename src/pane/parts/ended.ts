/** A part of a refusal as a sentence of its own: a capital in front, a stop at the end. */
export function ended(text: string): string {
  const capital = text.charAt(0).toUpperCase() + text.slice(1);
  return text === "" || /[.!?]$/.test(capital) ? capital : `${capital}.`;
}
