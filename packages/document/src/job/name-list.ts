const SHOWN = 12

/** Names to choose from, as a sentence lists them; the first dozen of many. */
export const nameList = (names: readonly string[]): string =>
  names.length === 0
    ? 'none'
    : names.length > SHOWN
      ? `${names.slice(0, SHOWN).join(', ')} and ${names.length - SHOWN} more`
      : names.join(', ')
