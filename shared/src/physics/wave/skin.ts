/**
 * Skin effect: what a round wire's own impedance is by its resistance to direct current, at a complex frequency s.
 *
 * The exact solution of Maxwell's equations inside a round wire (S. Ramo, J. R. Whinnery, T. Van Duzer, Fields and
 * Waves in Communication Electronics, "internal impedance of a round wire") is
 *
 *     Z / Rdc = (x/2) I0(x) / I1(x),   x = a sqrt(s mu / rho)
 *
 * Since Rdc = rho / (pi a²), x²/4 = s mu / (4 pi Rdc) = s * 1e-7 / Rdc in SI units: the wire's resistance per metre
 * says all, whatever its gauge. The ratio of Bessel functions is the continued fraction
 *
 *     1 + q/(2 + q/(3 + q/(4 + …)))   with q = x²/4
 *
 * which is cut off where neighbouring levels are nearly alike. It holds the wire's inner inductance too.
 */

/** mu / (4 pi) of copper, as of vacuum, in H/m. */
export const skinConstant = 1e-7;

/** Levels that are computed one by one; the rest is closed in one step. Then the error is below 1e-4 of the whole at every frequency. */
const levels = 12;

/** Writes the real and the imaginary part of Z / Rdc for a complex q into `out`. */
export function skinRatio(qRe: number, qIm: number, out: Float64Array): void {
  // Where levels change slowly, f = n - 1/2 + q/f nearly: f(n) is about (n - 1/2 + sqrt(n² + 4 q)) / 2.
  const sRe = levels * levels + 4 * qRe;
  const sIm = 4 * qIm;
  const size = Math.hypot(sRe, sIm);
  const rootRe = Math.sqrt((size + sRe) / 2);
  let re = (levels - 0.5 + rootRe) / 2;
  let im = rootRe === 0 ? 0 : sIm / (4 * rootRe);
  for (let level = levels - 1; 1 <= level; level--) {
    const scale = 1 / (re * re + im * im);
    const nextRe = level + (qRe * re + qIm * im) * scale;
    im = (qIm * re - qRe * im) * scale;
    re = nextRe;
  }
  out[0] = re;
  out[1] = im;
}
