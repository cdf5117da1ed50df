/** Plain data, as JSON carries it. What the log stores is always this. */
export type Json = null | boolean | number | string | readonly Json[] | { readonly [name: string]: Json };
