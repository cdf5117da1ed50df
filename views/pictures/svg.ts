/** The few words that every drawing is written with. Attributes and classes only: the page's rules forbid inline style. */
export type Attributes = Readonly<Record<string, string | number | undefined>>;

/** Text that is safe inside an element or a quoted attribute. */
function escapeText(text: string): string {
  return text.replace(/[&<>"']/g, (character) => `&#${character.charCodeAt(0)};`);
}

/** A number with at most two decimals: a drawing unit is about a screen dot. */
export function round(value: number): number {
  const rounded = Math.round(value * 100) / 100;
  return rounded === 0 ? 0 : rounded;
}

function attributeText(attributes: Attributes): string {
  return Object.entries(attributes)
    .filter(([, value]) => value !== undefined)
    .map(
      ([name, value]) => ` ${name}="${typeof value === 'number' ? round(value) : escapeText(String(value))}"`,
    )
    .join('');
}

/** An element without content, for example `shape('path', { d })`. */
export function shape(name: string, attributes: Attributes): string {
  return `<${name}${attributeText(attributes)}/>`;
}

/** A `g`, or the element named by `is`, around pieces that are SVG already. */
export function group(attributes: Attributes & { is?: string }, children: readonly string[]): string {
  const { is = 'g', ...rest } = attributes;
  return `<${is}${attributeText(rest)}>${children.join('')}</${is}>`;
}

/** Letters on the drawing. */
export function letters(attributes: Attributes, text: string): string {
  return `<text${attributeText(attributes)}>${escapeText(text)}</text>`;
}

/** Hatching at 45 or 135 degrees. `id` must be unique on the page. */
export function hatchPattern(
  attributes: { id: string; every: number; degrees: number; width: number; class: string },
  under?: string,
): string {
  const { id, every, degrees, width } = attributes;
  return group(
    {
      is: 'pattern',
      id,
      width: every,
      height: every,
      patternUnits: 'userSpaceOnUse',
      patternTransform: `rotate(${degrees})`,
    },
    [
      under === undefined ? '' : shape('rect', { width: every, height: every, class: under }),
      shape('line', { x1: 0, y1: 0, x2: 0, y2: every, 'stroke-width': width, class: attributes.class }),
    ],
  );
}
