/** Work that takes long on a server with one thread, in steps between which others may be served. */

/** Works through all steps at once. @example atOnce(running(build, { state, seconds: 40, doing })) */
export function atOnce<T>(steps: Generator<void, T>): T {
  for (;;) {
    const step = steps.next();
    if (step.done === true) return step.value;
  }
}
