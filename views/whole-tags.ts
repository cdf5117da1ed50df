/** Markup, and what nothing can be put into: letters of a picture, of an option, of a field, of a key. */
const MARKUP = String.raw`<!--[\s\S]*?-->|<(script|style|textarea|title|option|button|summary|svg|pre)\b[\s\S]*?<\/\1>|<(?:"[^"]*"|'[^']*'|[^>"'])*>`;
/** A tag of the trade, short enough to fit where a screen is 320 px wide: `PV-1234`, `IA-201-1`, `HV-201A`. */
const TAG_OF_TRADE = String.raw`(?<![\w./-])([A-Z]{1,5}-\d[\dA-Za-z]{0,5}(?:-\d{1,3})?)(?![\w-])`;
const EITHER = new RegExp(`${MARKUP}|${TAG_OF_TRADE}`, 'g');

/**
 * Keeps the tags of valves, points and gauges whole in running text: a browser breaks a line after their hyphen, and the
 * half that is left reads as another tag.
 *
 * @example wholeTags('<p>Shut HV-201A.</p>') // '<p>Shut <span class="whole">HV-201A</span>.</p>'
 */
export function wholeTags(html: string): string {
  return html.replace(EITHER, (found, _around: string | undefined, tag: string | undefined) =>
    tag === undefined ? found : `<span class="whole">${tag}</span>`,
  );
}
