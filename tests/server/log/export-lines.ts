import { exportLine } from '../../../server/log/export.ts';
import type { Store } from '../../../server/store/store.ts';

/** The whole log, or one stream of it, as the text of an export. */
export async function exportedText(store: Store, stream?: string): Promise<string> {
  const lines = stream === undefined ? store.lines(Number.MIN_SAFE_INTEGER) : await store.stream(stream);
  let text = '';
  for await (const line of lines) text += `${exportLine(line)}\n`;
  return text;
}
