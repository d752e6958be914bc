/**
 * The fast Fourier transform of a power of two points, in place (J. W. Cooley, J. W. Tukey 1965), for one size that is
 * used many times.
 */
class FourierTransform {
  private readonly cosines: Float64Array;
  private readonly sines: Float64Array;
  private readonly reversed: Uint32Array;

  constructor(readonly size: number) {
    if (size < 2 || (size & (size - 1)) !== 0) throw new RangeError(`${size} is no power of two`);
    this.cosines = new Float64Array(size / 2);
    this.sines = new Float64Array(size / 2);
    for (let index = 0; index < size / 2; index++) {
      this.cosines[index] = Math.cos((2 * Math.PI * index) / size);
      this.sines[index] = Math.sin((2 * Math.PI * index) / size);
    }
    this.reversed = new Uint32Array(size);
    for (let index = 1; index < size; index++) {
      this.reversed[index] = (this.reversed[index >> 1]! >> 1) | (index & 1 ? size >> 1 : 0);
    }
  }

  /** x[m] = sum over k of X[k] exp(+j 2 pi k m / size): the inverse transform without its factor 1 / size. */
  inverse(re: Float64Array, im: Float64Array): void {
    const { size, cosines, sines, reversed } = this;
    for (let index = 0; index < size; index++) {
      const other = reversed[index]!;
      if (other <= index) continue;
      const keptRe = re[index]!;
      const keptIm = im[index]!;
      re[index] = re[other]!;
      im[index] = im[other]!;
      re[other] = keptRe;
      im[other] = keptIm;
    }
    // The first round turns nothing.
    for (let left = 0; left < size; left += 2) {
      const keptRe = re[left]!;
      const keptIm = im[left]!;
      re[left] = keptRe + re[left + 1]!;
      im[left] = keptIm + im[left + 1]!;
      re[left + 1] = keptRe - re[left + 1]!;
      im[left + 1] = keptIm - im[left + 1]!;
    }
    for (let half = 2; half < size; half <<= 1) {
      const stride = size / (2 * half);
      for (let start = 0; start < size; start += 2 * half) {
        for (let offset = 0, turn = 0; offset < half; offset++, turn += stride) {
          const left = start + offset;
          const right = left + half;
          const cosine = cosines[turn]!;
          const sine = sines[turn]!;
          const turnedRe = re[right]! * cosine - im[right]! * sine;
          const turnedIm = re[right]! * sine + im[right]! * cosine;
          re[right] = re[left]! - turnedRe;
          im[right] = im[left]! - turnedIm;
          re[left]! += turnedRe;
          im[left]! += turnedIm;
        }
      }
    }
  }
}

/** By size, of which there are few; kept, since its sines take longer than a transform. */
const transforms = new Map<number, FourierTransform>();

/** @throws RangeError when the size is no power of two. */
export function fourierTransform(size: number): FourierTransform {
  let transform = transforms.get(size);
  if (!transform) {
    transform = new FourierTransform(size);
    transforms.set(size, transform);
  }
  return transform;
}
