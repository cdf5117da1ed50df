/** A sentence begins with a large letter, wherever its text was made. @example capital('air to open') // 'Air to open' */
export function capital(text: string): string {
  return text.slice(0, 1).toUpperCase() + text.slice(1);
}
