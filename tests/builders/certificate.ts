/** A certificate signed by its own key, for servers under test: no key of anything real lies in this project. */
import { generateKeyPairSync, sign } from 'node:crypto';
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';

export interface CertificateFiles {
  readonly certFile: string;
  readonly keyFile: string;
  /** The certificate itself, for a caller that trusts no other. */
  readonly cert: string;
}

/** X.509 (RFC 5280) in DER (X.690), as little of it as TLS asks for: a name, two days, a key, an address. */
export function aCertificate(folder: string, address: readonly number[] = [127, 0, 0, 1]): CertificateFiles {
  const { publicKey, privateKey } = generateKeyPairSync('ec', { namedCurve: 'P-256' });
  const name = sequence(set(sequence(OID.commonName, der(0x0c, Buffer.from('a server under test')))));
  const algorithm = sequence(OID.ecdsaWithSha256);
  const alternativeNames = sequence(OID.subjectAltName, der(0x04, sequence(der(0x87, Buffer.from(address)))));
  const toBeSigned = sequence(
    der(0xa0, der(0x02, Buffer.from([2]))),
    der(0x02, Buffer.from([1])),
    algorithm,
    name,
    sequence(utcTime('200101000000Z'), utcTime('491231235959Z')),
    name,
    publicKey.export({ type: 'spki', format: 'der' }),
    der(0xa3, sequence(alternativeNames)),
  );
  const signature = der(0x03, Buffer.concat([Buffer.from([0]), sign('sha256', toBeSigned, privateKey)]));
  const cert = pem(sequence(toBeSigned, algorithm, signature));
  const [certFile, keyFile] = [join(folder, 'cert.pem'), join(folder, 'key.pem')];
  writeFileSync(certFile, cert);
  writeFileSync(keyFile, privateKey.export({ type: 'pkcs8', format: 'pem' }), { mode: 0o600 });
  return { certFile, keyFile, cert };
}

/** Object identifiers, tag and length included. */
const OID = {
  commonName: Buffer.from('0603550403', 'hex'),
  subjectAltName: Buffer.from('0603551d11', 'hex'),
  ecdsaWithSha256: Buffer.from('06082a8648ce3d040302', 'hex'),
} as const;

function der(tag: number, content: Uint8Array): Buffer {
  const { length } = content;
  const size =
    length < 0x80 ? [length] : length < 0x100 ? [0x81, length] : [0x82, length >> 8, length & 0xff];
  return Buffer.concat([Buffer.from([tag, ...size]), content]);
}

function sequence(...parts: readonly Uint8Array[]): Buffer {
  return der(0x30, Buffer.concat(parts));
}

function set(...parts: readonly Uint8Array[]): Buffer {
  return der(0x31, Buffer.concat(parts));
}

function utcTime(text: string): Buffer {
  return der(0x17, Buffer.from(text, 'ascii'));
}

function pem(bytes: Buffer): string {
  const lines = bytes.toString('base64').match(/.{1,64}/g) ?? [];
  return ['-----BEGIN CERTIFICATE-----', ...lines, '-----END CERTIFICATE-----', ''].join('\n');
}
