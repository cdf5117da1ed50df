/**
 * The shortest decimal text that stands for a value exactly, found by trying one digit more each time.
 *
 * @param near     the value in the unit that is written, with whatever the conversion rounded
 * @param isExact  whether a candidate, read back, gives the very value that is kept
 * @returns digits with a point and no exponent, or null where no number of the machine gives it back
 * @example exactDigits({ near: 0.7499999999999999, isExact: (inch) => inch * 0.0254 === 0.01905 }) // '0.75'
 */
export function exactDigits({
  near,
  isExact,
}: {
  readonly near: number;
  isExact(candidate: number): boolean;
}): string | null {
  for (let digits = 1; digits <= 17; digits += 1) {
    const candidate = Number(near.toPrecision(digits));
    if (isExact(candidate)) return plainDigits(candidate);
  }
  return null;
}

/** A number without an exponent. @example plainDigits(2.5e-7) // "0.00000025" */
export function plainDigits(value: number): string {
  const text = String(value);
  if (!text.includes('e')) return text;
  const [mantissa = '', exponent = '0'] = text.split('e');
  const decimals = (mantissa.split('.')[1] ?? '').length - Number(exponent);
  return value.toFixed(Math.min(100, Math.max(0, decimals)));
}
