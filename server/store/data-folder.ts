import { chmodSync, closeSync, existsSync, mkdirSync, openSync, readdirSync, statfsSync } from 'node:fs';
import { join } from 'node:path';

const FOLDER_MODE = 0o700;
const FILE_MODE = 0o600;

/** All files of ours in the data folder begin so. */
const OUR_FILES = 'yokeside';

export interface DataFolder {
  readonly database: string;
  readonly lock: string;
}

/** The folder that YOKESIDE_DATA names, or `yokeside-data` where the program was started. */
export function dataPath(environment: { readonly YOKESIDE_DATA?: string | undefined }): string {
  return environment.YOKESIDE_DATA || 'yokeside-data';
}

/** Where the files are; touches nothing. */
export function dataFolder(folder: string): DataFolder {
  return { database: join(folder, `${OUR_FILES}.sqlite`), lock: join(folder, `${OUR_FILES}.lock`) };
}

/**
 * Makes the data folder if need be, readable by nobody but the server's own user where the system knows modes.
 * A folder that somebody else filled keeps its mode (it might be a shared one); our files in it are closed anyway.
 *
 * @throws Error in plain words if it lies on a network file system, where SQLite's locks cannot be trusted
 */
export function prepareDataFolder(folder: string): DataFolder {
  mkdirSync(folder, { recursive: true, mode: FOLDER_MODE });
  if (isNetworkFileSystem(statfsSync(folder).type)) {
    throw new Error(
      `The data folder ${folder} lies on a network or shared file system. Choose one on a disk of this machine.`,
    );
  }
  if (readdirSync(folder).every((name) => name.startsWith(OUR_FILES))) chmodSync(folder, FOLDER_MODE);
  return dataFolder(folder);
}

/** SQLite gives its side files the mode of the main file, so this one decides for all. */
export function prepareFile(path: string): void {
  // Only a missing file is opened here: closing a file drops every lock that this process holds on it.
  if (!existsSync(path)) closeSync(openSync(path, 'a', FILE_MODE));
  chmodSync(path, FILE_MODE);
}

/** Magic numbers of Linux's statfs(2): NFS, SMB, CIFS, SMB2, 9P, FUSE. Other systems report numbers of their own. */
const NETWORK_FILE_SYSTEMS = [0x6969, 0x517b, 0xff534d42, 0xfe534d42, 0x01021997, 0x65735546];

/** @param type as statfs reports it */
export function isNetworkFileSystem(type: number): boolean {
  return process.platform === 'linux' && NETWORK_FILE_SYSTEMS.includes(type >>> 0);
}
