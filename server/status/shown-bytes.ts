const UNITS = ['bytes', 'KiB', 'MiB', 'GiB', 'TiB'] as const;

/** A size as people read it. @example shownBytes(1_610_612_736) // '1.5 GiB' */
export function shownBytes(bytes: number): string {
  const step = bytes < 1024 ? 0 : Math.min(UNITS.length - 1, Math.floor(Math.log2(bytes) / 10));
  const value = bytes / 1024 ** step;
  return `${step === 0 || value >= 100 ? Math.round(value) : value.toFixed(1)} ${UNITS[step]}`;
}
