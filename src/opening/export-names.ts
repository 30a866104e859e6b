/** Files in a folder or archive that may be exports, by their names. */
const exportName = /\.(?:csv|txt|tsv|tab|log|dat|asc|prn)(?:\.gz)?$/iu;

export function looksLikeExport(name: string): boolean {
  const last = name.split(/[\\/]/u).at(-1) ?? name;
  return (
    exportName.test(last) &&
    !last.startsWith('.') &&
    !last.startsWith('~$') &&
    !/(?:^|\/)__MACOSX\//u.test(name)
  );
}
