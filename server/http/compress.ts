/** Answers in fewer bytes, for screens at the far end of a plant's radio network. */
import { promisify } from 'node:util';
import { brotliCompress, constants, gzip } from 'node:zlib';

type Coding = 'br' | 'gzip';
type Bytes = Uint8Array<ArrayBuffer>;

/** Below this the head of the answer is larger than what is saved. */
const BYTES_MIN = 1024;

/** Texts. Fonts and photos are compressed as they are; a live stream must leave line by line. */
export const COMPRESSIBLE = /^(?:text\/(?!event-stream)|application\/(?:json|[\w.]+\+json)|image\/svg\+xml)/;

/**
 * Answers of known length, compressed as the browser takes them. What is under way while it is made (an export, live
 * news) has no length and goes out as it comes. Pages may be compressed along with what a person typed: another site
 * cannot have a page of ours fetched with our cookies (`SameSite=Strict`) and so cannot measure its length.
 */
export class Compressor {
  /** Files whose address changes with them, each compressed once and thoroughly. */
  readonly #files = new Map<string, Promise<Bytes>>();

  async compressed(request: Request, answer: Response): Promise<Response> {
    const length = Number(answer.headers.get('content-length') ?? 0);
    const isText = COMPRESSIBLE.test(answer.headers.get('content-type') ?? '');
    if (!isText || length < BYTES_MIN || answer.headers.has('content-encoding')) return answer;
    const headers = new Headers(answer.headers);
    const isFile = headers.get('cache-control')?.includes('immutable') ?? false;
    const coding = codingFor(request.headers.get('accept-encoding') ?? '');
    if (coding === undefined) return answer;
    const { status } = answer;
    const key = `${coding} ${new URL(request.url).pathname}`;
    const squeeze = async (): Promise<Bytes> =>
      SQUEEZE[coding](new Uint8Array(await answer.arrayBuffer()), isFile);
    const bytes = isFile ? await this.#once(key, squeeze) : await squeeze();
    headers.set('content-encoding', coding);
    headers.set('content-length', String(bytes.length));
    return new Response(bytes, { status, headers });
  }

  #once(key: string, squeeze: () => Promise<Bytes>): Promise<Bytes> {
    const before = this.#files.get(key);
    if (before !== undefined) return before;
    const made = squeeze();
    this.#files.set(key, made);
    return made;
  }
}

/**
 * A file is made as small as it can be, once. A page of 70 kB took 1.4 to 2.2 ms as gzip here and 1.5 to 3.5 ms by brotli
 * at 5, which leaves a tenth less of it; above 5 almost nothing is gained.
 */
const BROTLI_QUALITY = { file: 11, page: 5 };

const SQUEEZE: Readonly<Record<Coding, (bytes: Bytes, isFile: boolean) => Promise<Bytes>>> = {
  br: async (bytes, isFile) => {
    const params = {
      [constants.BROTLI_PARAM_QUALITY]: BROTLI_QUALITY[isFile ? 'file' : 'page'],
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.length,
    };
    return new Uint8Array(await promisify(brotliCompress)(bytes, { params }));
  },
  gzip: async (bytes, isFile) => {
    const level = isFile ? constants.Z_BEST_COMPRESSION : constants.Z_DEFAULT_COMPRESSION;
    return new Uint8Array(await promisify(gzip)(bytes, { level }));
  },
};

/** Browsers take the smaller one over TLS and from their own machine alone. @returns nothing where neither is taken */
function codingFor(accepted: string): Coding | undefined {
  const weights = new Map(
    accepted.split(',').map((part) => {
      const [name = '', ...parameters] = part.split(';').map((piece) => piece.trim().toLowerCase());
      const q = parameters.find((parameter) => parameter.startsWith('q='));
      return [name, q === undefined ? 1 : Number(q.slice(2)) || 0];
    }),
  );
  const takes = (name: Coding): boolean => (weights.get(name) ?? weights.get('*') ?? 0) > 0;
  if (takes('br')) return 'br';
  return takes('gzip') ? 'gzip' : undefined;
}
