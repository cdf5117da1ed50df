/** Markup, and what nothing can be put into: letters of a picture, of an option, of a field, of a script. */
const MARKUP = String.raw`<!--[\s\S]*?-->|<(script|style|textarea|title|option|svg|pre)\b[\s\S]*?<\/\1>|<(?:"[^"]*"|'[^']*'|[^>"'])*>`;
/** A tag of the trade, short enough to fit where a screen is 320 px wide: `PV-1234`, `IA-201-1`, `HV-201A`. */
const TAG_OF_TRADE = String.raw`(?<![\w./-])([A-Z]{1,5}-\d[\dA-Za-z]{0,5}(?:-\d{1,3})?)(?![\w-])`;
const EITHER = new RegExp(`${MARKUP}|${TAG_OF_TRADE}`, 'g');

/** Running text stands in these; keys, choices and cells lay their pieces out side by side and would be torn apart. */
const RUNNING = /^<(?:p|li|dd|h[1-3]|small)\b|class="(?:[^"]* )?line__what\b/;
const NAME = /^<\/?([a-z][a-z\d]*)/;
const VOID: ReadonlySet<string> = new Set(['br', 'hr', 'img', 'input', 'link', 'meta', 'wbr', 'source']);

/**
 * Keeps the tags of valves, points and gauges whole in running text: a browser breaks a line after their hyphen, and the
 * half that is left reads as another tag.
 *
 * @example wholeTags('<p>Shut HV-201A.</p>') // '<p>Shut <span class="whole">HV-201A</span>.</p>'
 */
export function wholeTags(html: string): string {
  const around: { readonly name: string; readonly isRunning: boolean }[] = [];
  return html.replace(EITHER, (found, kept: string | undefined, tag: string | undefined) => {
    if (tag !== undefined) return around.at(-1)?.isRunning ? `<span class="whole">${tag}</span>` : found;
    const name = NAME.exec(found)?.[1] ?? '';
    if (kept !== undefined || name === '' || VOID.has(name) || found.endsWith('/>')) return found;
    if (!found.startsWith('</')) around.push({ name, isRunning: RUNNING.test(found) });
    else {
      const at = around.findLastIndex((one) => one.name === name);
      if (at >= 0) around.length = at;
    }
    return found;
  });
}
