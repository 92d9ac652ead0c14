/** The six yield equations as the wood standard prints them (NDS Table 12.3.1A), written apart from the product, lb before reduction. */
export function closedForms(d: number, fyb: number, lm: number, fem: number, ls: number, fes: number) {
  const re = fem / fes;
  const rt = lm / ls;
  const k1 = (Math.sqrt(re + 2 * re ** 2 * (1 + rt + rt ** 2) + rt ** 2 * re ** 3) - re * (1 + rt)) / (1 + re);
  const k2 = -1 + Math.sqrt(2 * (1 + re) + (2 * fyb * (1 + 2 * re) * d ** 2) / (3 * fem * lm ** 2));
  const k3 = -1 + Math.sqrt((2 * (1 + re)) / re + (2 * fyb * (2 + re) * d ** 2) / (3 * fem * ls ** 2));
  return {
    Im: d * lm * fem,
    Is: d * ls * fes,
    II: k1 * d * ls * fes,
    IIIm: (k2 * d * lm * fem) / (1 + 2 * re),
    IIIs: (k3 * d * ls * fem) / (2 + re),
    IV: d ** 2 * Math.sqrt((2 * fem * fyb) / (3 * (1 + re))),
  };
}
