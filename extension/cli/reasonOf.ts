/** Why the machine would not read or write a file, in words for who stands before it. */
export function reasonOf(error: unknown): string {
  const code = typeof error === 'object' && error !== null && 'code' in error ? String(error.code) : '';
  return reasons.get(code) ?? (code === '' ? 'the machine says no' : `the machine says ${code}`);
}

/** The same of a file that was to be written: what is not there is its folder. */
export function reasonNotWritten(error: unknown): string {
  const reason = reasonOf(error);
  return reason === reasons.get('ENOENT') ? 'its folder is not there' : reason;
}

const reasons: ReadonlyMap<string, string> = new Map([
  ['ENOENT', 'it is not there'],
  ['ENOTDIR', 'a part of its path is no folder'],
  ['EISDIR', 'it is a folder'],
  ['EACCES', 'this user may not'],
  ['EPERM', 'this user may not'],
  ['EROFS', 'the disk is read-only'],
  ['ENOSPC', 'the disk is full'],
  ['ELOOP', 'it is a link that leads back to itself'],
  ['ENAMETOOLONG', 'its name is too long'],
  ['EMFILE', 'too many files are open'],
  ['EIO', 'the disk or the line to it is faulty'],
]);
