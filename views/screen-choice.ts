/** Light or dark, plain or sun: kept in a cookie, so that the first paint is right without any script. */
export interface ScreenChoice {
  readonly theme: 'auto' | 'light' | 'dark';
  readonly contrast: 'auto' | 'sun' | 'plain';
}

export const SCREEN_COOKIE = 'screen';
export const SCREEN_CHOICES = {
  auto: { text: 'As this machine', theme: 'auto', contrast: 'auto' },
  light: { text: 'Light', theme: 'light', contrast: 'plain' },
  dark: { text: 'Dark', theme: 'dark', contrast: 'plain' },
  sun: { text: 'Sun, light', theme: 'light', contrast: 'sun' },
  night: { text: 'Sun, dark', theme: 'dark', contrast: 'sun' },
} as const satisfies Readonly<Record<string, ScreenChoice & { text: string }>>;
export type ScreenChoiceName = keyof typeof SCREEN_CHOICES;

/**
 * The choice that a cookie or a form names. Anything unknown is "as this machine": a wrong colour
 * is no reason to refuse a page.
 *
 * @example
 * screenChoice('sun').contrast // 'sun'
 */
export function screenChoice(name: string | undefined): (typeof SCREEN_CHOICES)[ScreenChoiceName] & {
  readonly name: ScreenChoiceName;
} {
  const known = Object.keys(SCREEN_CHOICES).find((key): key is ScreenChoiceName => key === name) ?? 'auto';
  return { name: known, ...SCREEN_CHOICES[known] };
}
