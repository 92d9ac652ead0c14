/** Borders of an area that is given as rectangles side by side. */

type Corner = readonly [x: number, y: number];
export type Segment = readonly [from: Corner, to: Corner];

/** A side of a rectangle: on which line it lies, from where to where along it, and on which side of the line the area is. */
interface Side {
  readonly axis: 0 | 1;
  readonly line: number;
  readonly from: number;
  readonly to: number;
  readonly inner: 1 | -1;
}

const CLOSE = 1e-6;

/** The sides of the rectangles without those stretches along which two of them meet. */
export function outerBorders(outlines: readonly (readonly Corner[])[]): readonly Segment[] {
  const sides = outlines.flatMap(sidesOf);
  return sides.flatMap((side) => {
    const meeting = sides.filter(
      (o) => o.axis === side.axis && o.inner !== side.inner && Math.abs(o.line - side.line) < CLOSE,
    );
    return without(side, meeting).map(([a, b]): Segment => {
      const corner = (along: number): Corner => (side.axis === 0 ? [along, side.line] : [side.line, along]);
      return [corner(a), corner(b)];
    });
  });
}

function sidesOf(outline: readonly Corner[]): readonly Side[] {
  const xs = outline.map(([x]) => x);
  const ys = outline.map(([, y]) => y);
  const [left, right, low, high] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)];
  return [
    { axis: 0, line: low, from: left, to: right, inner: 1 },
    { axis: 0, line: high, from: left, to: right, inner: -1 },
    { axis: 1, line: left, from: low, to: high, inner: 1 },
    { axis: 1, line: right, from: low, to: high, inner: -1 },
  ];
}

function without(side: Side, meeting: readonly Side[]): readonly (readonly [number, number])[] {
  let rest: (readonly [number, number])[] = [[side.from, side.to]];
  for (const { from, to } of meeting) {
    rest = rest.flatMap(([a, b]) => [[a, Math.min(b, from)] as const, [Math.max(a, to), b] as const]);
    rest = rest.filter(([a, b]) => b - a > CLOSE);
  }
  return rest;
}
