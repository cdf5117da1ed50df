import type { Renderer } from '../../views/render.ts';

/** Where the practice bench is served. */
export const AT_BENCH = '/practice';

/**
 * An address of a job, as the bench serves it; any other stays what it is.
 * @example atBench('/jobs/7#card') // '/practice/jobs/7#card'
 */
export function atBench(address: string): string {
  return /^\/jobs(?:[/?#]|$)/.test(address) ? `${AT_BENCH}${address}` : address;
}

/** Attributes of ours that hold an address. Text cannot look like one: its quotes are escaped. */
const ADDRESSES = / (href|action|hx-get|hx-post)="(\/jobs[^"]*)"/g;

/** The same templates as for real jobs, with every address of a job on the bench. */
export function benchViews(views: Renderer): Renderer {
  return {
    ...views,
    render: (template, params, language) =>
      views
        .render(template, params, language)
        .replaceAll(ADDRESSES, (_, name: string, address: string) => ` ${name}="${atBench(address)}"`),
  };
}
