import { english } from './english.js'
import { englishChoices } from './english-choices.js'
import { englishPlaces } from './english-places.js'

export const words = { ...english, ...englishPlaces, ...englishChoices } as const
