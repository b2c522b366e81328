export type FileContent = string | Uint8Array;

/** A folder's files by their paths inside it, with forward slashes. */
export type FileSet = ReadonlyMap<string, FileContent>;
