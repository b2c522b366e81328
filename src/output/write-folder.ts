import { randomBytes } from 'node:crypto';
import { cp, mkdir, readdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import path from 'node:path';
import type { FileSet } from './file-set.js';

/** A folder that cannot be written as asked; the message is for the maker. */
export class FolderError extends Error {
  constructor(message: string) {
    super(message);
    this.name = 'FolderError';
  }
}

/** What an interrupted run left beside the folder is swept away once it is this old. */
const STALE_MS = 60 * 60 * 1000;
/** Marks the folders of one run. */
const MARK = /^[0-9a-f]{8}$/;
/** Other people's files are carried over into the new folder; more than this looks like a mistake. */
const MOST_OTHER_FILES = 50;

/**
 * Puts `files` into `folder` in one step: they are written beside it first, and take its place
 * only when all is there. Whatever fails or is interrupted before, the old folder stays whole.
 * Of the old folder, what `isOurs` names is replaced; anything else in it is carried over.
 * @throws FolderError when the folder cannot be written, or is a file.
 */
export async function replaceFolder(
  folder: string,
  files: FileSet,
  isOurs: (entry: string) => boolean,
): Promise<void> {
  const target = path.resolve(folder);
  const parent = path.dirname(target);
  await tidyAfterInterruption(target);
  const mark = randomBytes(4).toString('hex');
  const staged = path.join(parent, `.${path.basename(target)}-new-${mark}`);
  const old = path.join(parent, `.${path.basename(target)}-old-${mark}`);
  const kept = await otherEntries(target, isOurs);
  try {
    await mkdir(staged, { recursive: true });
    for (const [name, content] of files) {
      const file = path.join(staged, ...name.split('/'));
      await mkdir(path.dirname(file), { recursive: true });
      await writeFile(file, content);
    }
    for (const entry of kept ?? []) {
      await cp(path.join(target, entry), path.join(staged, entry), {
        recursive: true,
        preserveTimestamps: true,
      });
    }
    if (kept !== null) await rename(target, old);
    try {
      await rename(staged, target);
    } catch (error) {
      if (kept !== null) await rename(old, target);
      throw error;
    }
  } catch (error) {
    await rm(staged, { recursive: true, force: true });
    throw new FolderError(reason(target, error));
  }
  await rm(old, { recursive: true, force: true });
}

/**
 * A run killed between its two renames left the old folder under a name of its own: it is put
 * back. Half-written folders of dead runs are removed.
 */
async function tidyAfterInterruption(target: string): Promise<void> {
  const parent = path.dirname(target);
  const base = path.basename(target);
  const siblings = await readdir(parent).catch((): string[] => []);
  const isLeft = (name: string, kind: 'new' | 'old') =>
    name.startsWith(`.${base}-${kind}-`) && MARK.test(name.slice(`.${base}-${kind}-`.length));
  const old = siblings.filter((name) => isLeft(name, 'old'));
  if (!siblings.includes(base) && old.length > 0) {
    await rename(path.join(parent, old.pop() as string), target);
  }
  for (const name of [...old, ...siblings.filter((n) => isLeft(n, 'new'))]) {
    const leftover = path.join(parent, name);
    const { mtimeMs } = await stat(leftover);
    if (Date.now() - mtimeMs > STALE_MS) await rm(leftover, { recursive: true, force: true });
  }
}

/** Entries of the folder that are not ours to replace; null when there is no folder. */
async function otherEntries(
  target: string,
  isOurs: (entry: string) => boolean,
): Promise<string[] | null> {
  let entries: string[];
  try {
    if (!(await stat(target)).isDirectory()) {
      throw new FolderError(
        `${target} is a file, not a folder. Name another folder with --out, or move the file away.`,
      );
    }
    entries = await readdir(target);
  } catch (error) {
    if (error instanceof FolderError) throw error;
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return null;
    throw new FolderError(reason(target, error));
  }
  const others = entries.filter((entry) => !isOurs(entry));
  if (others.length > MOST_OTHER_FILES) {
    throw new FolderError(
      `${target} holds ${others.length} files and folders that are not part of a book, so it is ` +
        'not replaced. Name an empty or a new folder with --out.',
    );
  }
  return others;
}

/** Reads a text file; a missing one, a folder or an unreadable one gives a sentence. */
export async function readText(file: string): Promise<string> {
  try {
    return await readFile(file, 'utf8');
  } catch (error) {
    throw new FolderError(reason(file, error));
  }
}

/** Writes one new file; an existing one is never overwritten. */
export async function writeNewFile(file: string, content: string): Promise<void> {
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(file, content, { flag: 'wx' });
  } catch (error) {
    throw new FolderError(reason(file, error));
  }
}

/** Writes one file; an existing one is replaced in one step. */
export async function writeFileWhole(file: string, content: Uint8Array): Promise<void> {
  const staged = `${file}.${randomBytes(4).toString('hex')}`;
  try {
    await mkdir(path.dirname(file), { recursive: true });
    await writeFile(staged, content);
    await rename(staged, file);
  } catch (error) {
    await rm(staged, { force: true });
    throw new FolderError(reason(file, error));
  }
}

const REASONS: Record<string, string> = {
  ENOENT: 'there is no such file or folder',
  EACCES: 'this user may not read or write there',
  EPERM: 'this user may not read or write there',
  EROFS: 'the disk is read-only',
  ENOSPC: 'the disk is full',
  ENOTDIR: 'a part of the path is a file, not a folder',
  EISDIR: 'it is a folder, not a file',
  EEXIST: 'it exists already',
  EBUSY: 'another program is using it',
  ENAMETOOLONG: 'the name is too long',
};

function reason(where: string, error: unknown): string {
  const code = (error as NodeJS.ErrnoException).code ?? '';
  return `${where}: ${REASONS[code] ?? (error as Error).message}.`;
}
