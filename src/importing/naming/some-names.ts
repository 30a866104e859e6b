/** Up to four names, else three and how many more. */
export function someNames(names: readonly string[]): string {
  return names.length <= 4
    ? names.join(', ')
    : `${names.slice(0, 3).join(', ')} and ${names.length - 3} more`;
}

/** `1 circuit`, `3 circuits`. */
export function counted(count: number, what: string): string {
  return `${count} ${what}${count === 1 ? '' : 's'}`;
}
