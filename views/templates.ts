/**
 * The templates as functions, by their path below `views/`; null where the program runs as it was written, and reads their files.
 * The build puts another file in the place of this one.
 */
export const TEMPLATES: Readonly<Record<string, object>> | null = null;
