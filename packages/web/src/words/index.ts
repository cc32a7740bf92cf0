import { english } from './english.js'
import { englishChoices } from './english-choices.js'
import { englishLog } from './english-log.js'
import { englishPlaces } from './english-places.js'

export const words = { ...english, ...englishPlaces, ...englishChoices, ...englishLog } as const
