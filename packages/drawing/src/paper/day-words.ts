const days = ['Sun', 'Mon', 'Tue', 'Wed', 'Thu', 'Fri', 'Sat']
const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec']

/** `Tue 14 Jul` for `2026-07-14`; the same on every machine. */
export function dayText(date: string): string {
  const day = new Date(`${date}T00:00:00Z`)
  return `${days[day.getUTCDay()]} ${day.getUTCDate()} ${months[day.getUTCMonth()]}`
}

/** `Tue 14 Jul 2026` */
export const fullDayText = (date: string): string => `${dayText(date)} ${date.slice(0, 4)}`
