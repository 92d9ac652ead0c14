/** Figures as drawings write them: short, since the working beside them holds all digits. */

const MINUS = "−";

/** To so many decimals, zeros at the end left off. */
export function short(value: number, decimals = 1): string {
  const rounded = Number(value.toFixed(decimals));
  return `${rounded < 0 ? MINUS : ""}${grouped(Math.abs(rounded))}`;
}

/** Thousands apart from 10,000 on; four digits read well without. */
function grouped(value: number): string {
  return value < 10_000 ? String(value) : value.toLocaleString("en-US", { maximumFractionDigits: 12 });
}

/** With its sign, as pressures are given. */
export function signed(value: number, decimals = 1): string {
  const text = Math.abs(value).toFixed(decimals);
  return Number(text) === 0 ? text : `${value < 0 ? MINUS : "+"}${text}`;
}

/** Three figures that count, whole parts never shortened. */
export function rough(value: number): string {
  const size = value === 0 ? 0 : Math.floor(Math.log10(Math.abs(value)));
  return short(value, Math.min(12, Math.max(0, 2 - size)));
}

/** Inches with a fraction to a sixteenth where the figure is one, otherwise with decimals: 47 1/4, 0.06 */
export function inches(value: number): string {
  const parts = Math.round(value * 16);
  if (Math.abs(parts / 16 - value) > 0.004) return rough(value);
  const whole = Math.floor(parts / 16);
  let [over, under] = [parts % 16, 16];
  while (over > 0 && over % 2 === 0) [over, under] = [over / 2, under / 2];
  if (over === 0) return String(whole);
  return `${whole === 0 ? "" : `${whole} `}${over}/${under}`;
}

/** Dollars without cents, thousands apart: $193,342 */
export function dollars(value: number): string {
  const whole = String(Math.abs(Math.round(value))).replace(/\B(?=(\d{3})+$)/g, ",");
  return `${Math.round(value) < 0 ? MINUS : ""}$${whole}`;
}
