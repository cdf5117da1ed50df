/** What a page says, without its tags. */
const NAMED: Readonly<Record<string, string>> = { amp: '&', lt: '<', gt: '>', quot: '"', '#39': "'" };

/** @example textOf('<p>3 &lt; 4</p>') // '3 < 4' */
export function textOf(html: string): string {
  return html
    .replaceAll(/<[^>]*>/g, ' ')
    .replaceAll(/&(amp|lt|gt|quot|#39);/g, (_, name: string) => NAMED[name] ?? '')
    .replaceAll(/\s+/g, ' ');
}
