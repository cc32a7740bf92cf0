/** Whole amounts of a job's currency. */
export const moneyIn = (currency: string) => {
  const format = new Intl.NumberFormat('en-GB', { style: 'currency', currency, maximumFractionDigits: 0 })
  return (amount: number): string => format.format(amount)
}

/** What something costs over something else: `+€581`, `−€476`, a dot where it is the same. */
export const moreMoneyIn = (currency: string) => {
  const format = new Intl.NumberFormat('en-GB', {
    style: 'currency',
    currency,
    maximumFractionDigits: 0,
    signDisplay: 'exceptZero',
  })
  return (amount: number): string =>
    Math.round(amount) === 0 ? '·' : format.format(amount).replace('-', '−')
}
