import { english } from './english.js'
import { englishChoices } from './english-choices.js'
import { englishDays } from './english-days.js'
import { englishLog } from './english-log.js'
import { englishMixSite } from './english-mix-site.js'
import { englishPlaces } from './english-places.js'
import { englishTradesTally } from './english-trades-tally.js'

export const words = {
  ...english,
  ...englishPlaces,
  ...englishChoices,
  ...englishDays,
  ...englishLog,
  ...englishTradesTally,
  ...englishMixSite,
} as const
