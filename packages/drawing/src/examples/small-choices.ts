import type { SharedSiteParts, TradeOffParts } from '../views/index.js'

/** Ways to run the pavilion: invented, two of them equally soon, one beaten in everything. */
export const smallTradeOff: TradeOffParts = {
  job: 'Orchard pavilion',
  currency: 'EUR',
  rows: [
    { name: 'soonest', date: '2026-07-16', cost: 41_900, calm: 0.1, isChosen: true },
    { name: 'soonest, a night shift', date: '2026-07-16', cost: 44_300, calm: 0.05 },
    { name: 'in between', date: '2026-07-18', cost: 39_400, calm: 0.4 },
    { name: 'cheapest', date: '2026-07-21', cost: 36_800, calm: 0.45 },
    { name: 'calmest', date: '2026-07-24', cost: 38_100, calm: 1 },
    { name: 'calm and cheap', date: '2026-07-22', cost: 37_000, calm: 0.8 },
  ],
}

const growth = (building: string, from: number, each: number, lifts: number) => ({
  building,
  evenings: Array.from({ length: lifts }, (_, i) => ({
    date: `2026-07-${String(from + i * each).padStart(2, '0')}`,
    share: (i + 1) / lifts,
  })),
})

/** Three small buildings of one lane: invented. */
export const smallSharing: SharedSiteParts = {
  site: 'Orchard lane',
  shared: [growth('gatehouse', 6, 1, 4), growth('pavilion', 6, 1, 6), growth('store', 10, 1, 4)],
  oneAfterOther: [growth('gatehouse', 6, 1, 4), growth('pavilion', 10, 1, 6), growth('store', 16, 1, 4)],
}
