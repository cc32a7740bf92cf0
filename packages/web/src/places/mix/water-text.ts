/** Water cannot be colder than ice: below that only ice, a cooler silo or another hour helps. */
export const waterText = (needed: number | undefined, degrees: (value: number) => string): string =>
  needed === undefined ? '—' : needed < 0 ? 'colder than ice' : degrees(needed)
